using NightWatch.Service.Settings;
using NightWatch.Service.Wording;
using NightWatch.Store;
using NodaTime;

namespace NightWatch.Service.Commands.Checks;

/// <summary>The clock is set, and agrees with the database server's where there is one.</summary>
internal static class ClockCheck
{
    private static readonly Instant Built = NodaTime.Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Duration Most = Duration.FromSeconds(2);

    public static async Task<Finding> RunAsync(AllSettings settings, Shell shell, CancellationToken stop)
    {
        var now = shell.Clock.GetCurrentInstant();
        if (now < Built) return new Finding("clock", false, $"it reads {InstantText.Of(now)}, which is before this program was written.");
        try
        {
            await using var database = Database.Open(settings.Database.Connection);
            if (await database.ReadClockAsync(stop) is { } server)
            {
                var apart = server > now ? server - now : now - server;
                if (apart > Most) return new Finding("clock", false, FormattableString.Invariant($"it is {apart.TotalSeconds:0.0} s away from the database server's; accepted: 2 s."));
            }
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return new Finding("clock", true, $"{InstantText.Of(now)}; not compared with the database server's.");
        }

        return new Finding("clock", true, $"{InstantText.Of(now)}.");
    }
}
