-- Who had watches before nights were told by their chance: the next letter about a night, or the digest, says what is new and takes the row away.
CREATE TABLE news_owed (
  -- lower case
  address TEXT NOT NULL PRIMARY KEY
) STRICT;

INSERT INTO news_owed (address) SELECT DISTINCT address FROM watch;
