-- Appended, never changed. No reference to the watch: the history outlives it.
CREATE TABLE verdict (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  watch_id TEXT NOT NULL,
  night TEXT NOT NULL,
  pass TEXT NOT NULL,
  at INTEGER NOT NULL,
  class TEXT NOT NULL,
  probability REAL NOT NULL,
  basis TEXT NOT NULL,
  basis_count INTEGER NOT NULL,
  run_start INTEGER,
  run_end INTEGER,
  reasons TEXT NOT NULL,
  forecast_ids TEXT NOT NULL,
  inputs_hash TEXT NOT NULL,
  letter TEXT,
  why TEXT NOT NULL
) STRICT;

CREATE INDEX verdict_by_night ON verdict (watch_id, night, id);
CREATE INDEX verdict_by_age ON verdict (at);

-- What a subscriber knows about one watch and one night. The version refuses a commit over a row that changed since it was read.
CREATE TABLE told_night (
  watch_id TEXT NOT NULL REFERENCES watch (id) ON DELETE CASCADE,
  night TEXT NOT NULL,
  version INTEGER NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (watch_id, night)
) STRICT;
