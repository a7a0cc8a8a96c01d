using System.Text;
using NightWatch.Service.Settings;
using NightWatch.Service.Ticking;
using NightWatch.Store.Due;
using NightWatch.Watchkeeping.Forecasts;
using NodaTime;

namespace NightWatch.Service.Measuring;

/// <summary>Alive: the process answers. Ready: the database answers and the ticks come and go well. No personal data in either.</summary>
/// <remarks>
/// Feeds that do not answer make it no less ready, since neither a restart nor another process would mend that; the answer says so.
/// </remarks>
internal static class Health
{
    /// <summary>The whole answer where all is well; what else there is to say follows it.</summary>
    public const string Ready = "ready";

    private static readonly Duration Patience = Duration.FromMinutes(15);

    /// <summary>
    /// Answers before there is any route: who asks every few seconds shall wait for nothing, and an idle service shall not have to make its
    /// routes for it.
    /// </summary>
    public static void UseHealth(this WebApplication app)
    {
        var (ticker, due, options, clock) = (
            app.Services.GetRequiredService<Ticker>(),
            app.Services.GetRequiredService<DueStore>(),
            app.Services.GetRequiredService<ServiceOptions>(),
            app.Services.GetRequiredService<IClock>());
        var feeds = app.Services.GetRequiredService<FeedLedger>();
        app.Use(
            (context, next) =>
                (context.Request.Path.Value, HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method)) switch
                {
                    ("/health/live", true) => SayAsync(context, StatusCodes.Status200OK, "alive"),
                    ("/health/ready", true) => SayReadyAsync(context, ticker, due, feeds, options, clock),
                    _ => next(context),
                });
    }

    private static async Task SayReadyAsync(
        HttpContext context, Ticker ticker, DueStore due, FeedLedger feeds, ServiceOptions options, IClock clock)
    {
        if (await TroubleAsync(ticker, due, options, clock, context.RequestAborted) is { } trouble)
            await SayAsync(context, StatusCodes.Status503ServiceUnavailable, $"not ready: {trouble}");
        else
            await SayAsync(context, StatusCodes.Status200OK, feeds.Silence is { } why ? $"{Ready}, but no feed answers: {why}" : Ready);
    }

    private static async Task SayAsync(HttpContext context, int status, string text)
    {
        var line = Encoding.UTF8.GetBytes(text + "\n");
        (context.Response.StatusCode, context.Response.ContentType, context.Response.ContentLength) = (
            status, "text/plain; charset=utf-8", line.Length);
        await context.Response.Body.WriteAsync(line, context.RequestAborted);
    }

    private static async Task<string?> TroubleAsync(
        Ticker ticker, DueStore due, ServiceOptions options, IClock clock, CancellationToken stop)
    {
        try
        {
            // By an index, since somebody asks every few seconds for years.
            await due.NextAsync(stop);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return "the database does not answer";
        }

        if (ticker.LastTick is not { } last) return "the first tick has not come to its end";
        // A pass over very many watches may take longer than a tick; the sender's own outages are no reason to restart.
        if (clock.GetCurrentInstant() - last > Patience + Duration.FromSeconds(options.TickSeconds))
            return "no tick came to its end for a quarter of an hour";
        return ticker.Trouble is null ? null : "the last tick failed; the log says why";
    }
}
