using NightWatch.Service.Passes;
using NightWatch.Service.Settings;
using NightWatch.Store.Due;
using NodaTime;

namespace NightWatch.Service.Hosting;

/// <summary>Alive: the process answers. Ready: the database answers and the ticks come and go well. No personal data in either.</summary>
internal static class Health
{
    private static readonly Duration Patience = Duration.FromMinutes(15);

    public static void MapHealth(this WebApplication app)
    {
        app.MapGet("/health/live", () => Results.Text("alive\n"));
        app.MapGet("/health/ready", async (Ticker ticker, DueStore due, ServiceOptions options, IClock clock, CancellationToken stop) =>
            await TroubleAsync(ticker, due, options, clock, stop) is { } trouble
                ? Results.Text($"not ready: {trouble}\n", statusCode: StatusCodes.Status503ServiceUnavailable)
                : Results.Text("ready\n"));
    }

    private static async Task<string?> TroubleAsync(Ticker ticker, DueStore due, ServiceOptions options, IClock clock, CancellationToken stop)
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
        if (clock.GetCurrentInstant() - last > Patience + Duration.FromSeconds(options.TickSeconds)) return "no tick came to its end for a quarter of an hour";
        return ticker.Trouble is null ? null : "the last tick failed; the log says why";
    }
}
