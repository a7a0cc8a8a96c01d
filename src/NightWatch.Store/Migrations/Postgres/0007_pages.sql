-- Keys that all processes share: the pages' signing key, the ring of data protection.
CREATE TABLE secret (
  name TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  value BYTEA NOT NULL,
  made_at BIGINT NOT NULL
);

-- What a mailed link may do once. The token itself is in the letter only; here is its SHA-256.
CREATE TABLE ticket (
  hash TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  purpose TEXT COLLATE "C" NOT NULL,
  -- lower case
  address TEXT COLLATE "C" NOT NULL,
  -- what the purpose needs, for a sign-up the watch
  body TEXT,
  made_at BIGINT NOT NULL,
  expires_at BIGINT NOT NULL
);

CREATE INDEX ticket_by_address ON ticket (address);
CREATE INDEX ticket_by_age ON ticket (expires_at);

CREATE TABLE session (
  hash TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  -- lower case
  address TEXT COLLATE "C" NOT NULL,
  made_at BIGINT NOT NULL,
  expires_at BIGINT NOT NULL
);

CREATE INDEX session_by_address ON session (address);
CREATE INDEX session_by_age ON session (expires_at);

-- One row a use of something rationed; keys are keyed hashes, so that neither mail nor network addresses stand here.
CREATE TABLE ration (
  key TEXT COLLATE "C" NOT NULL,
  at BIGINT NOT NULL
);

CREATE INDEX ration_by_key ON ration (key, at);
CREATE INDEX ration_by_age ON ration (at);
