using System.Globalization;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>What each refusal of Open-Meteo asks of us.</summary>
/// <remarks>
/// It counts by the UTC minute, hour and day and names in words which of the three is used up; it sends no Retry-After, but one is
/// obeyed if it comes. Source: github.com/open-meteo/open-meteo, Sources/App/Helper/Vapor/RateLimiter.swift.
/// </remarks>
internal static class OpenMeteoStatus
{
    private static readonly Duration AfterCrowding = Duration.FromSeconds(30);
    private static readonly Duration Margin = Duration.FromSeconds(5);

    /// <summary>For every status that brings no forecast.</summary>
    public static Fetched.Unavailable Explain(FeedAnswer answer)
    {
        var reason = Reason(answer.Body);
        var said = reason is null ? "" : $": {reason}";
        var status = (int)answer.Status;
        return status switch
        {
            400 => new($"Open-Meteo refuses the request (400){said}", null, true),
            401 or 403 => new($"Open-Meteo wants another key or plan for this ({Text(status)}){said}", null, true) { WholeFeed = true },
            404 => new("Open-Meteo has no such service (404); its address in the settings is wrong.", null, true) { WholeFeed = true },
            429 => new($"Open-Meteo throttles this address (429){said}", Wait(reason, answer), false) { WholeFeed = true },
            408 or (>= 500 and < 600) => new($"Open-Meteo is in trouble ({Text(status)}){said}", answer.RetryAfter, false),
            _ => new(
                $"Open-Meteo answered {Text(status)}, which it does not document{said}", answer.RetryAfter, status is >= 400 and < 500),
        };
    }

    /// <summary>The service's own words; null where there are none.</summary>
    public static string? Reason(ReadOnlyMemory<byte> body)
    {
        try
        {
            return FeedJson.Read(body, "Open-Meteo", root => root.TextOrNull("reason"));
        }
        catch (ForecastFormatException)
        {
            return null;
        }
    }

    private static Duration Wait(string? reason, FeedAnswer answer)
    {
        var said = reason ?? "";
        Duration wait;
        if (said.Contains("daily", StringComparison.OrdinalIgnoreCase))
            wait = UntilNext(Duration.FromDays(1), answer.RetrievedAt);
        else if (said.Contains("minutely", StringComparison.OrdinalIgnoreCase))
            wait = UntilNext(Duration.FromMinutes(1), answer.RetrievedAt);
        else if (said.Contains("concurrent", StringComparison.OrdinalIgnoreCase))
            wait = AfterCrowding;
        else
            wait = UntilNext(Duration.FromHours(1), answer.RetrievedAt); // hourly, or not said
        return Duration.Max(wait, answer.RetryAfter ?? Duration.Zero);
    }

    private static Duration UntilNext(Duration unit, Instant now)
    {
        var since = now - NodaConstants.UnixEpoch;
        return unit * (Math.Floor(since / unit) + 1) - since + Margin;
    }

    private static string Text(int status) => status.ToString(CultureInfo.InvariantCulture);
}
