-- The answer as its series, packed. Empty in the rows of an earlier version, whose body it is then read from; body is empty where it is not.
ALTER TABLE forecast ADD COLUMN series BYTEA;
