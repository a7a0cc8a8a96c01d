CREATE TABLE site (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL,
  changed_at INTEGER NOT NULL
) STRICT;

CREATE TABLE watch (
  id TEXT NOT NULL PRIMARY KEY,
  site_id TEXT NOT NULL REFERENCES site (id),
  -- lower case, to find one subscriber's watches; the body keeps the address as it was written
  address TEXT NOT NULL,
  paused INTEGER NOT NULL,
  body TEXT NOT NULL,
  changed_at INTEGER NOT NULL
) STRICT;

CREATE INDEX watch_by_site ON watch (site_id);
CREATE INDEX watch_by_address ON watch (address);
