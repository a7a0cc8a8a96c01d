CREATE TABLE outbox (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  dedupe_key TEXT NOT NULL UNIQUE,
  message_id TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  recipient TEXT NOT NULL,
  -- gzip; empty once the letter is closed and old
  mime BLOB NOT NULL,
  created_at INTEGER NOT NULL,
  not_before INTEGER NOT NULL,
  not_after INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('Pending', 'Sending', 'Retry', 'Sent', 'Dead', 'Expired', 'Superseded', 'Suppressed')),
  attempt INTEGER NOT NULL DEFAULT 0,
  -- claims in a row without an outcome: the process died with the letter in hand
  unfinished INTEGER NOT NULL DEFAULT 0,
  fence INTEGER NOT NULL DEFAULT 0,
  lease_owner TEXT,
  lease_until INTEGER,
  last_code INTEGER,
  last_enhanced TEXT,
  last_text TEXT,
  ambiguous_count INTEGER NOT NULL DEFAULT 0,
  remote_queue_id TEXT,
  closed_at INTEGER
) STRICT;

CREATE INDEX outbox_open ON outbox (not_before, id) WHERE state IN ('Pending', 'Retry', 'Sending');
CREATE INDEX outbox_closed ON outbox (closed_at) WHERE closed_at IS NOT NULL;
CREATE INDEX outbox_by_state ON outbox (state, id);

CREATE TABLE outbox_about (
  outbox_id INTEGER NOT NULL REFERENCES outbox (id) ON DELETE CASCADE,
  watch_id TEXT NOT NULL,
  night TEXT NOT NULL,
  PRIMARY KEY (outbox_id, watch_id, night)
) STRICT;

CREATE INDEX outbox_about_by_watch ON outbox_about (watch_id, night);
