using System.Collections.Concurrent;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Logging;

namespace NightWatch.EndToEnd.Programs;

/// <summary>
/// An OTLP collector on loopback that takes everything (gRPC over HTTP/2; OpenTelemetry Protocol Specification 1.x, "OTLP/gRPC").
/// </summary>
internal sealed class Collector : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly ConcurrentQueue<(string Service, string Body)> got = [];

    private Collector(WebApplication app) => this.app = app;

    public string Url => app.Urls.First();

    /// <summary>The strings of all that a service ("MetricsService", "TraceService") was sent, and the bytes between them.</summary>
    public string Of(string service) => string.Concat(got.Where(export => export.Service == service).Select(export => export.Body));

    public static async Task<Collector> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
            kestrel.Listen(IPAddress.Loopback, 0, listen => listen.Protocols = HttpProtocols.Http2));
        var collector = new Collector(builder.Build());
        collector.app.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            // "/opentelemetry.proto.collector.metrics.v1.MetricsService/Export"
            collector.got.Enqueue((context.Request.Path.Value!.Split('/')[1].Split('.')[^1], Encoding.Latin1.GetString(body.ToArray())));
            context.Response.ContentType = "application/grpc";
            await context.Response.Body.WriteAsync(new byte[5]); // one empty message
            context.Response.AppendTrailer("grpc-status", "0");
        });
        await collector.app.StartAsync();
        return collector;
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();
}
