CREATE TABLE due (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  watch_id TEXT NOT NULL REFERENCES watch (id) ON DELETE CASCADE,
  pass TEXT NOT NULL,
  night TEXT NOT NULL,
  slot TEXT NOT NULL,
  due_at INTEGER NOT NULL,
  not_after INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('Pending', 'Claimed', 'Done', 'Dropped')),
  why TEXT,
  attempt INTEGER NOT NULL DEFAULT 0,
  fence INTEGER NOT NULL DEFAULT 0,
  lease_owner TEXT,
  lease_until INTEGER,
  closed_at INTEGER,
  UNIQUE (watch_id, pass, night, slot)
) STRICT;

CREATE INDEX due_open ON due (due_at) WHERE state IN ('Pending', 'Claimed');
CREATE INDEX due_closed ON due (closed_at) WHERE state IN ('Done', 'Dropped');
