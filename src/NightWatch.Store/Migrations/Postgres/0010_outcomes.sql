-- What the nights were like, by who says so. No reference to the watch: like the verdicts, the record outlives it.
CREATE TABLE outcome (
  watch_id TEXT COLLATE "C" NOT NULL,
  night TEXT COLLATE "C" NOT NULL,
  source TEXT COLLATE "C" NOT NULL,
  outcome TEXT NOT NULL,
  at BIGINT NOT NULL,
  -- where it was seen and what that cannot tell
  note TEXT,
  PRIMARY KEY (watch_id, night, source)
);

CREATE INDEX outcome_by_age ON outcome (night);
