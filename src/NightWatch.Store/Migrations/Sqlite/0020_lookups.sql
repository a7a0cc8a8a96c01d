-- Whose letters they are, for a subscriber's export and for forgetting one.
CREATE INDEX outbox_by_recipient ON outbox (lower(recipient));
-- Letters that still have their text, for the nightly clean-up: it need not look at those of a year again.
CREATE INDEX outbox_texts ON outbox (closed_at) WHERE closed_at IS NOT NULL AND length(mime) > 0;
-- Memories by night over all watches.
CREATE INDEX told_night_by_age ON told_night (night);
