CREATE TABLE forecast (
  id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  feed TEXT COLLATE "C" NOT NULL,
  cell TEXT COLLATE "C" NOT NULL,
  issued_at BIGINT,
  -- as the feed sent it, for the next conditional request
  last_modified TEXT,
  expires_at BIGINT,
  -- moves on when the feed says that the answer still holds
  retrieved_at BIGINT NOT NULL,
  -- gzip
  body BYTEA NOT NULL
);

CREATE INDEX forecast_by_cell ON forecast (feed, cell, id);
CREATE INDEX forecast_by_age ON forecast (retrieved_at);
