-- What the nights were like, by who says so. No reference to the watch: like the verdicts, the record outlives it.
CREATE TABLE outcome (
  watch_id TEXT NOT NULL,
  night TEXT NOT NULL,
  source TEXT NOT NULL,
  outcome TEXT NOT NULL,
  at INTEGER NOT NULL,
  -- where it was seen and what that cannot tell
  note TEXT,
  PRIMARY KEY (watch_id, night, source)
) STRICT;

CREATE INDEX outcome_by_age ON outcome (night);
