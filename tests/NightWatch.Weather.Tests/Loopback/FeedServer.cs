using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace NightWatch.Weather.Tests.Loopback;

/// <summary>A real HTTP server on loopback that behaves as badly as it is told to.</summary>
internal sealed class FeedServer : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly ConcurrentQueue<SeenRequest> seen = new();

    private FeedServer(WebApplication app) => this.app = app;

    /// <summary>Its address, with a slash at the end.</summary>
    public Uri Url => new(app.Urls.First().TrimEnd('/') + "/");

    /// <summary>What was asked, in order.</summary>
    public IReadOnlyList<SeenRequest> Seen => [.. seen];

    /// <param name="answer">Gets the number of the request, from 1, and the request.</param>
    public static async Task<FeedServer> StartAsync(Func<int, HttpContext, Task> answer)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        var server = new FeedServer(builder.Build());
        var count = 0;
        server.app.Run(context =>
        {
            server.seen.Enqueue(new SeenRequest(
                context.Request.Path + context.Request.QueryString,
                context.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase)));
            return answer(Interlocked.Increment(ref count), context);
        });
        await server.app.StartAsync();
        return server;
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();
}

internal sealed record SeenRequest(string PathAndQuery, IReadOnlyDictionary<string, string> Headers);
