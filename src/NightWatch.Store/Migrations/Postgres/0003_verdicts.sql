-- Appended, never changed. No reference to the watch: the history outlives it.
CREATE TABLE verdict (
  id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  watch_id TEXT COLLATE "C" NOT NULL,
  night TEXT COLLATE "C" NOT NULL,
  pass TEXT COLLATE "C" NOT NULL,
  at BIGINT NOT NULL,
  class TEXT NOT NULL,
  probability DOUBLE PRECISION NOT NULL,
  basis TEXT NOT NULL,
  basis_count BIGINT NOT NULL,
  run_start BIGINT,
  run_end BIGINT,
  reasons TEXT NOT NULL,
  forecast_ids TEXT NOT NULL,
  inputs_hash TEXT NOT NULL,
  letter TEXT,
  why TEXT NOT NULL
);

CREATE INDEX verdict_by_night ON verdict (watch_id, night, id);
CREATE INDEX verdict_by_age ON verdict (at);

-- What a subscriber knows about one watch and one night. The version refuses a commit over a row that changed since it was read.
CREATE TABLE told_night (
  watch_id TEXT COLLATE "C" NOT NULL REFERENCES watch (id) ON DELETE CASCADE,
  night TEXT COLLATE "C" NOT NULL,
  version BIGINT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (watch_id, night)
);
