-- Keys that all processes share: the pages' signing key, the ring of data protection.
CREATE TABLE secret (
  name TEXT NOT NULL PRIMARY KEY,
  value BLOB NOT NULL,
  made_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- What a mailed link may do once. The token itself is in the letter only; here is its SHA-256.
CREATE TABLE ticket (
  hash TEXT NOT NULL PRIMARY KEY,
  purpose TEXT NOT NULL,
  -- lower case
  address TEXT NOT NULL,
  -- what the purpose needs, for a sign-up the watch
  body TEXT,
  made_at INTEGER NOT NULL,
  expires_at INTEGER NOT NULL
) STRICT;

CREATE INDEX ticket_by_address ON ticket (address);
CREATE INDEX ticket_by_age ON ticket (expires_at);

CREATE TABLE session (
  hash TEXT NOT NULL PRIMARY KEY,
  -- lower case
  address TEXT NOT NULL,
  made_at INTEGER NOT NULL,
  expires_at INTEGER NOT NULL
) STRICT;

CREATE INDEX session_by_address ON session (address);
CREATE INDEX session_by_age ON session (expires_at);

-- One row a use of something rationed; keys are keyed hashes, so that neither mail nor network addresses stand here.
CREATE TABLE ration (
  key TEXT NOT NULL,
  at INTEGER NOT NULL
) STRICT;

CREATE INDEX ration_by_key ON ration (key, at);
CREATE INDEX ration_by_age ON ration (at);
