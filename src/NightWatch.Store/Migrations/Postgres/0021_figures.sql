-- What a chance was made of, so that a night can teach once its outcome is known. Empty in the rows of an earlier version.
ALTER TABLE verdict ADD COLUMN figures TEXT;
-- What was learnt. Rows without are the probability maps of an earlier version: none is applied, their version numbers stay taken.
ALTER TABLE calibration ADD COLUMN learning TEXT;
