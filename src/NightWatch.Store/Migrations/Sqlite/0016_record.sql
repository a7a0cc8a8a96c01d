-- What a verdict needs to be scored and made again. Empty in the rows of an earlier version.
ALTER TABLE verdict ADD COLUMN feed TEXT;
ALTER TABLE verdict ADD COLUMN lead INTEGER;
-- the probability before calibration; null: it was not changed
ALTER TABLE verdict ADD COLUMN raw REAL;
ALTER TABLE verdict ADD COLUMN calibration INTEGER;
ALTER TABLE verdict ADD COLUMN runs TEXT;

-- Every version ever used, so that an old verdict can be traced.
CREATE TABLE calibration (
  feed TEXT NOT NULL,
  lead INTEGER NOT NULL,
  version INTEGER NOT NULL,
  learnt_at INTEGER NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (feed, lead, version)
) STRICT;
