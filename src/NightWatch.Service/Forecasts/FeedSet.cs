using NightWatch.Weather.Feeds;

namespace NightWatch.Service.Forecasts;

/// <summary>A feed and what reads its stored answers.</summary>
/// <param name="Feed">Asks the world.</param>
/// <param name="Reader">Reads what it answered, also long after.</param>
internal sealed record FeedLine(IForecastFeed Feed, IForecastReader Reader);

/// <summary>The feeds in the order of trust.</summary>
internal sealed record FeedSet(IReadOnlyList<FeedLine> Lines);
