using System.Globalization;
using NightWatch.Store.Connections;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Service.Commands.Checks;

/// <summary>
/// The clock is set, is steered, and agrees with the others: the database server's, and those of whom the check asked before.
/// </summary>
internal static class ClockCheck
{
    private static readonly Instant Built = NodaTime.Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Duration MostFromDatabase = Duration.FromSeconds(2);

    // A minute moves no decision, but it moves every time in a letter; two minutes are no longer a matter of a slow answer.
    private static readonly Duration Noted = Duration.FromSeconds(5);
    private static readonly Duration Wrong = Duration.FromMinutes(2);

    public static async Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var now = bench.Shell.Clock.GetCurrentInstant();
        if (now < Built) return [Finding.Fault("clock", $"it reads {InstantText.Of(now)}, which is before this program was written.")];
        if (await AgainstDatabaseAsync(bench, stop) is { } apart) return [apart];
        var jumped = bench.Clocks.Jumped;
        if (Duration.Max(jumped, -jumped) > Duration.FromSeconds(1))
            return
            [
                Finding.Warning(
                    "clock",
                    FormattableString.Invariant(
                        $"it was set by {jumped.TotalSeconds:+0.0;-0.0} s while the check ran; let a time service steer it slowly.")),
            ];
        if (bench.Clocks.Best is not { } witness)
        {
            return KernelClock.IsSteered() == false
                ?
                [
                    Finding.Warning(
                        "clock",
                        $"{InstantText.Of(now)}; no time service steers it, as the kernel says, and nothing was there to compare it with."),
                ]
                : [Finding.Ok("clock", $"{InstantText.Of(now)}; nothing was there to compare it with.")];
        }

        var seconds = witness.Ahead.TotalSeconds;
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"{InstantText.Of(now)}, {Math.Abs(seconds):0.0} s {(seconds < 0 ? "behind" : "ahead of")} {witness.Who} (give or take " +
            $"{witness.Uncertainty.TotalSeconds:0.0} s)");
        if (witness.AtLeast > Wrong)
            return [Finding.Fault("clock", text + "; accepted: 2 minutes. Every time in a letter would be wrong.")];
        return witness.AtLeast > Noted
            ? [Finding.Warning("clock", text + "; let a time service steer it.")]
            : [Finding.Ok("clock", text + ".")];
    }

    private static async Task<Finding?> AgainstDatabaseAsync(CheckBench bench, CancellationToken stop)
    {
        try
        {
            await using var database = Database.Open(bench.Settings.Database.Connection);
            if (await database.ReadClockAsync(stop) is not { } server) return null;
            var now = bench.Shell.Clock.GetCurrentInstant();
            var apart = server > now ? server - now : now - server;
            return apart > MostFromDatabase
                ? Finding.Fault(
                    "clock",
                    FormattableString.Invariant($"it is {apart.TotalSeconds:0.0} s away from the database server's; accepted: 2 s."))
                : null;
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return null; // The check of the database has said why.
        }
    }
}
