CREATE TABLE forecast (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  feed TEXT NOT NULL,
  cell TEXT NOT NULL,
  issued_at INTEGER,
  -- as the feed sent it, for the next conditional request
  last_modified TEXT,
  expires_at INTEGER,
  -- moves on when the feed says that the answer still holds
  retrieved_at INTEGER NOT NULL,
  -- gzip
  body BLOB NOT NULL
) STRICT;

CREATE INDEX forecast_by_cell ON forecast (feed, cell, id);
CREATE INDEX forecast_by_age ON forecast (retrieved_at);
