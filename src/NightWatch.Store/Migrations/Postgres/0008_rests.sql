-- A watch that rests is neither looked at nor written about before this instant; the body has the local date.
ALTER TABLE watch ADD COLUMN rests_until BIGINT;
