using System.Globalization;
using System.IO.Compression;
using Microsoft.AspNetCore.Http;

namespace NightWatch.Weather.Tests.Loopback;

/// <summary>Answers a server can give, good and bad.</summary>
internal static class Answers
{
    public static Task Json(this HttpContext context, byte[] body, int status = 200)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "application/json";
        return context.Response.Body.WriteAsync(body).AsTask();
    }

    public static Task Json(this HttpContext context, string body, int status = 200) =>
        context.Json(System.Text.Encoding.UTF8.GetBytes(body), status);

    public static async Task Gzip(this HttpContext context, byte[] body)
    {
        context.Response.Headers.ContentEncoding = "gzip";
        await using var gzip = new GZipStream(context.Response.Body, CompressionLevel.Fastest);
        await gzip.WriteAsync(body);
    }

    public static Task Status(this HttpContext context, int status, string? retryAfter = null)
    {
        context.Response.StatusCode = status;
        if (retryAfter is not null)
            context.Response.Headers.RetryAfter = retryAfter;
        return Task.CompletedTask;
    }

    /// <summary>Promises the whole body, sends half, and breaks the connection.</summary>
    public static async Task Truncated(this HttpContext context, byte[] body)
    {
        context.Response.ContentLength = body.Length;
        await context.Response.Body.WriteAsync(body.AsMemory(0, body.Length / 2));
        await context.Response.Body.FlushAsync();
        context.Abort();
    }

    public static string Rfc1123(NodaTime.Instant at) => at.ToDateTimeUtc().ToString("R", CultureInfo.InvariantCulture);
}
