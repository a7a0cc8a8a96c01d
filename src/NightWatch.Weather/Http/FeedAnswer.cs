using System.Net;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Http;

/// <summary>An answer of a feed's host, read to its end.</summary>
/// <param name="Status">The status code.</param>
/// <param name="Body">The body, decompressed.</param>
/// <param name="LastModified">The header, verbatim.</param>
/// <param name="Expires">The header; null if it is missing or no date.</param>
/// <param name="RetryAfter">From now; null if the header is missing.</param>
/// <param name="RetrievedAt">When it had come.</param>
internal sealed record FeedAnswer(
    HttpStatusCode Status, ReadOnlyMemory<byte> Body, string? LastModified, Instant? Expires, Duration? RetryAfter, Instant RetrievedAt)
{
    /// <summary>What is kept beside what it says.</summary>
    public FetchedHead ToHead() => new(LastModified, Expires, RetrievedAt);
}
