-- What fell, as the forecasts said it shortly before: one amount an hour and place, the one said last.
CREATE TABLE rain (
  cell TEXT NOT NULL,
  hour INTEGER NOT NULL,
  mm REAL NOT NULL,
  said_at INTEGER NOT NULL,
  PRIMARY KEY (cell, hour)
) STRICT, WITHOUT ROWID;

CREATE INDEX rain_by_age ON rain (hour);

-- Until when a feed must not be asked, also after a restart. An empty cell is the whole feed.
CREATE TABLE feed_hold (
  feed TEXT NOT NULL,
  cell TEXT NOT NULL,
  until INTEGER NOT NULL,
  PRIMARY KEY (feed, cell)
) STRICT, WITHOUT ROWID;
