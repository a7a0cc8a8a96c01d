-- How long ago a feed last answered, without reading all that it ever said.
CREATE INDEX forecast_by_feed_age ON forecast (feed, retrieved_at);
