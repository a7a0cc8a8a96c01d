-- Addresses that refuse letters for good: nothing is sent to them until they are confirmed anew or an operator takes them out.
CREATE TABLE suppression (
  -- lower case
  address TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  reason TEXT NOT NULL,
  code TEXT,
  at BIGINT NOT NULL
);

-- What servers said about letters to an address, at once or in a report later. Several refusals over days suppress too.
CREATE TABLE bounce (
  id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  address TEXT COLLATE "C" NOT NULL,
  message_id TEXT COLLATE "C" NOT NULL,
  status TEXT NOT NULL,
  text TEXT NOT NULL,
  at BIGINT NOT NULL,
  -- a report read twice counts once
  UNIQUE (message_id, status)
);

CREATE INDEX bounce_by_address ON bounce (address, at);
CREATE INDEX bounce_by_age ON bounce (at);

-- Calendar feeds by the hash of their token. A revoked one moves to the next generation, whose token is another.
CREATE TABLE calendar_feed (
  address TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  hash TEXT COLLATE "C" NOT NULL UNIQUE,
  generation BIGINT NOT NULL,
  made_at BIGINT NOT NULL
);

-- How a letter travels: by mail, or as a signed call to the subscriber's own address.
ALTER TABLE outbox ADD COLUMN channel TEXT NOT NULL DEFAULT 'Mail';
