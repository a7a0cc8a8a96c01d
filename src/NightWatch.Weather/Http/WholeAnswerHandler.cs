using System.Net;
using System.Text.Json;

namespace NightWatch.Weather.Http;

/// <summary>
/// Reads each answer to its end before it is handed on, so that a slow, broken or cut-off body fails the attempt like a broken connection
/// and is retried and timed like one. A 200 that is not whole JSON is such a body: a feed was seen to append an error text to one.
/// </summary>
internal sealed class WholeAnswerHandler : DelegatingHandler
{
    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var response = await base.SendAsync(request, cancellationToken);
        try
        {
            await response.Content.LoadIntoBufferAsync(FeedHost.MostBytes, cancellationToken);
            if (response.StatusCode == HttpStatusCode.OK && !IsWholeJson(await response.Content.ReadAsByteArrayAsync(cancellationToken)))
                throw new HttpRequestException("the answer's body is not whole JSON");
            return response;
        }
        catch (Exception e)
        {
            response.Dispose();
            if (e is IOException or InvalidDataException)
                throw new HttpRequestException(e.Message, e);
            throw;
        }
    }

    private static bool IsWholeJson(ReadOnlySpan<byte> body)
    {
        try
        {
            var reader = new Utf8JsonReader(body);
            while (reader.Read())
            {
            }

            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
