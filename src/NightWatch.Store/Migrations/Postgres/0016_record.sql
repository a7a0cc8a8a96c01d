-- What a verdict needs to be scored and made again. Empty in the rows of an earlier version.
ALTER TABLE verdict ADD COLUMN feed TEXT;
ALTER TABLE verdict ADD COLUMN lead BIGINT;
-- the probability before calibration; null: it was not changed
ALTER TABLE verdict ADD COLUMN raw DOUBLE PRECISION;
ALTER TABLE verdict ADD COLUMN calibration BIGINT;
ALTER TABLE verdict ADD COLUMN runs TEXT;

-- Every version ever used, so that an old verdict can be traced.
CREATE TABLE calibration (
  feed TEXT COLLATE "C" NOT NULL,
  lead BIGINT NOT NULL,
  version BIGINT NOT NULL,
  learnt_at BIGINT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (feed, lead, version)
);
