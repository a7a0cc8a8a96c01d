-- What fell, as the forecasts said it shortly before: one amount an hour and place, the one said last.
CREATE TABLE rain (
  cell TEXT COLLATE "C" NOT NULL,
  hour BIGINT NOT NULL,
  mm DOUBLE PRECISION NOT NULL,
  said_at BIGINT NOT NULL,
  PRIMARY KEY (cell, hour)
);

CREATE INDEX rain_by_age ON rain (hour);

-- Until when a feed must not be asked, also after a restart. An empty cell is the whole feed.
CREATE TABLE feed_hold (
  feed TEXT COLLATE "C" NOT NULL,
  cell TEXT COLLATE "C" NOT NULL,
  until BIGINT NOT NULL,
  PRIMARY KEY (feed, cell)
);
