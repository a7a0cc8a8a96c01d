using System.Globalization;
using System.Net;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.MetNorway;

/// <summary>What each status code of MET Norway asks of us (https://docs.api.met.no/doc/StatusCodes.html).</summary>
internal static class MetNorwayStatus
{
    /// <summary>A throttled application that comes back within the hour is on its way to be blocked.</summary>
    private static readonly Duration AfterThrottling = Duration.FromHours(1);

    /// <summary>For every status that brings no forecast.</summary>
    public static Fetched.Unavailable Explain(HttpStatusCode status, Duration? retryAfter) =>
        (int)status switch
        {
            400 => new("MET Norway did not understand the request (400); the site's coordinates or this program are wrong.", null, true),
            401 => new("MET Norway restricts this product (401).", null, true) { WholeFeed = true },
            403 => new(
                "MET Norway refuses this installation (403): its contact is missing, too general or blocked. Set a real contact, then " +
                "restart.",
                null,
                true)
            {
                WholeFeed = true,
            },
            404 => new("MET Norway has no forecast for this place at the moment (404).", retryAfter, false),
            422 => new("MET Norway does not cover this place (422).", null, true),
            429 => new(
                "MET Norway throttles this installation (429): too many requests, or it is not identified well enough.",
                Duration.Max(AfterThrottling, retryAfter ?? AfterThrottling),
                false)
            {
                WholeFeed = true,
            },
            499 or 500 or 502 or 503 or 504 => new(
                string.Create(CultureInfo.InvariantCulture, $"MET Norway is in trouble ({(int)status})."), retryAfter, false),
            var other => new(
                string.Create(CultureInfo.InvariantCulture, $"MET Norway answered {other}, which it does not document."),
                retryAfter,
                other is >= 400 and < 500),
        };
}
