CREATE TABLE outbox (
  id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  dedupe_key TEXT COLLATE "C" NOT NULL UNIQUE,
  message_id TEXT COLLATE "C" NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  recipient TEXT NOT NULL,
  -- gzip; empty once the letter is closed and old
  mime BYTEA NOT NULL,
  created_at BIGINT NOT NULL,
  not_before BIGINT NOT NULL,
  not_after BIGINT NOT NULL,
  state TEXT COLLATE "C" NOT NULL CHECK (state IN ('Pending', 'Sending', 'Retry', 'Sent', 'Dead', 'Expired', 'Superseded', 'Suppressed')),
  attempt BIGINT NOT NULL DEFAULT 0,
  -- claims in a row without an outcome: the process died with the letter in hand
  unfinished BIGINT NOT NULL DEFAULT 0,
  fence BIGINT NOT NULL DEFAULT 0,
  lease_owner TEXT,
  lease_until BIGINT,
  last_code BIGINT,
  last_enhanced TEXT,
  last_text TEXT,
  ambiguous_count BIGINT NOT NULL DEFAULT 0,
  remote_queue_id TEXT,
  closed_at BIGINT
);

CREATE INDEX outbox_open ON outbox (not_before, id) WHERE state IN ('Pending', 'Retry', 'Sending');
CREATE INDEX outbox_closed ON outbox (closed_at) WHERE closed_at IS NOT NULL;
CREATE INDEX outbox_by_state ON outbox (state, id);

CREATE TABLE outbox_about (
  outbox_id BIGINT NOT NULL REFERENCES outbox (id) ON DELETE CASCADE,
  watch_id TEXT COLLATE "C" NOT NULL,
  night TEXT COLLATE "C" NOT NULL,
  PRIMARY KEY (outbox_id, watch_id, night)
);

CREATE INDEX outbox_about_by_watch ON outbox_about (watch_id, night);
