-- What the night was worth and what had to be done first, so that lists and past nights tell it. Empty in the rows of an earlier version.
ALTER TABLE verdict ADD COLUMN worth TEXT;
