using System.Globalization;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NodaTime;

namespace NightWatch.Weather.Nws;

/// <summary>What each refusal of the National Weather Service asks of us. https://weather-gov.github.io/api/general-faqs</summary>
internal static class NwsStatus
{
    private static readonly Duration AfterThrottling = Duration.FromSeconds(30);

    /// <summary>For every status that brings no forecast.</summary>
    public static Fetched.Unavailable Explain(FeedAnswer answer)
    {
        var said = Detail(answer.Body);
        var status = (int)answer.Status;
        return status switch
        {
            400 => new($"The National Weather Service did not understand the request (400){said}", null, true),
            403 => new($"The National Weather Service refuses this installation (403): set a real contact, then restart{said}", null, true)
            {
                WholeFeed = true,
            },
            404 => new($"The National Weather Service does not forecast for this place (404){said}", null, true),
            429 => new(
                $"The National Weather Service throttles this address (429){said}",
                Duration.Max(AfterThrottling, answer.RetryAfter ?? Duration.Zero),
                false)
            {
                WholeFeed = true,
            },
            408 or (>= 500 and < 600) => new(
                $"The National Weather Service is in trouble ({Text(status)}){said}", answer.RetryAfter, false),
            _ => new(
                $"The National Weather Service answered {Text(status)}, which it does not document{said}",
                answer.RetryAfter,
                status is >= 400 and < 500),
        };
    }

    /// <summary>Title and correlation id of the problem document, for the operator's log.</summary>
    private static string Detail(ReadOnlyMemory<byte> body)
    {
        try
        {
            return FeedJson.Read(
                body,
                "problem",
                root =>
                    (root.TextOrNull("title") is { } title ? $": {title}" : "")
                    + (root.TextOrNull("correlationId") is { } id ? $" (correlation {id})" : ""));
        }
        catch (ForecastFormatException)
        {
            return "";
        }
    }

    private static string Text(int status) => status.ToString(CultureInfo.InvariantCulture);
}
