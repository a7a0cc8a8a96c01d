CREATE TABLE site (
  id TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  name TEXT NOT NULL,
  body TEXT NOT NULL,
  changed_at BIGINT NOT NULL
);

CREATE TABLE watch (
  id TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  site_id TEXT COLLATE "C" NOT NULL REFERENCES site (id),
  -- lower case, to find one subscriber's watches; the body keeps the address as it was written
  address TEXT COLLATE "C" NOT NULL,
  paused BIGINT NOT NULL,
  body TEXT NOT NULL,
  changed_at BIGINT NOT NULL
);

CREATE INDEX watch_by_site ON watch (site_id);
CREATE INDEX watch_by_address ON watch (address);
