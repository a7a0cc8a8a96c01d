CREATE TABLE due (
  id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  watch_id TEXT COLLATE "C" NOT NULL REFERENCES watch (id) ON DELETE CASCADE,
  pass TEXT COLLATE "C" NOT NULL,
  night TEXT COLLATE "C" NOT NULL,
  slot TEXT COLLATE "C" NOT NULL,
  due_at BIGINT NOT NULL,
  not_after BIGINT NOT NULL,
  state TEXT COLLATE "C" NOT NULL CHECK (state IN ('Pending', 'Claimed', 'Done', 'Dropped')),
  why TEXT,
  attempt BIGINT NOT NULL DEFAULT 0,
  fence BIGINT NOT NULL DEFAULT 0,
  lease_owner TEXT,
  lease_until BIGINT,
  closed_at BIGINT,
  UNIQUE (watch_id, pass, night, slot)
);

CREATE INDEX due_open ON due (due_at) WHERE state IN ('Pending', 'Claimed');
CREATE INDEX due_closed ON due (closed_at) WHERE state IN ('Done', 'Dropped');
