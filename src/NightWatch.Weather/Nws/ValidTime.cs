using NightWatch.Weather.Feeds;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Nws;

/// <summary>
/// The ISO 8601 intervals of the gridpoint layers: start and duration as seen, start and end or duration and end as allowed.
/// </summary>
internal static class ValidTime
{
    /// <summary>Longer than any forecast: a fault, and a way to fill the memory.</summary>
    private static readonly Duration Longest = Duration.FromDays(16);

    /// <summary>The interval; null for what cannot be read or cannot be meant.</summary>
    public static Interval? Parse(string? text)
    {
        if (text?.Split('/') is not [var left, var right])
            return null;
        var interval = (IsDuration(left), IsDuration(right)) switch
        {
            (false, true) when FeedJson.ParseInstant(left) is { } start && ParseDuration(right) is { } length => Between(start, length, 1),
            (true, false) when FeedJson.ParseInstant(right) is { } end && ParseDuration(left) is { } length => Between(end, length, -1),
            (false, false) when FeedJson.ParseInstant(left) is { } start && FeedJson.ParseInstant(right) is { } end && end > start =>
                new Interval(start, end),
            _ => (Interval?)null,
        };
        return interval is { } found && found.Duration <= Longest ? found : null;
    }

    private static bool IsDuration(string text) => text.StartsWith('P');

    private static Interval? Between(Instant at, Duration length, int sign)
    {
        if (length <= Duration.Zero || length > Longest || at < Instant.FromUtc(1970, 1, 1, 0, 0) || at > Instant.FromUtc(9000, 1, 1, 0, 0))
            return null;
        return sign > 0 ? new Interval(at, at + length) : new Interval(at - length, at);
    }

    private static Duration? ParseDuration(string text)
    {
        var parsed = PeriodPattern.Roundtrip.Parse(text);
        // A month or a year has no fixed length; no forecast needs one. Bounded before it is summed, so that nothing overflows.
        return
            parsed
                is
            {
                Success: true,
                Value:
                {
                    Years: 0,
                    Months: 0,
                    Weeks: >= 0 and < 4,
                    Days: >= 0 and < 32,
                    Hours: >= 0 and < 1000,
                    Minutes: >= 0 and < 100_000,
                    Seconds: >= 0 and < 10_000_000
                } value
            }
            ? Duration.FromDays(7 * value.Weeks + value.Days)
                + Duration.FromHours(value.Hours)
                + Duration.FromMinutes(value.Minutes)
                + Duration.FromSeconds(value.Seconds)
            : null;
    }
}
