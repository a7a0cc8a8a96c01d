namespace NightWatch.Planning.Chance;

/// <summary>What a record teaches of: errors differ by feed and grow with lead.</summary>
/// <param name="FeedId">The feed, as in the forecast series.</param>
/// <param name="Lead">Nights ahead, 0 on the day.</param>
public readonly record struct ChanceKey(string FeedId, int Lead);
