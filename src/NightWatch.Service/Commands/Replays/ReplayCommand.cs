using System.CommandLine;
using System.Diagnostics;
using NightWatch.Planning.Watches;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Replays;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Replays;

/// <summary>What would have been told with other limits, beside what was told and what came.</summary>
internal static class ReplayCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var nightsOf = new NightRange(isNeeded: true);
        var watch = Given.Text("--watch", "One watch's id; default all.", "id");
        var set = new Option<string[]>("--set")
        {
            Description = "A limit in place of every watch's own, such as cloud.stop=0.4; may be given several times.",
        };
        var json = Given.Json();
        var command = new Command(
            "replay", "Evaluates stored forecasts again, with other limits: what would have been told, what was told, what came.")
        {
            nightsOf.From,
            nightsOf.To,
            watch,
            set,
            json,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var clock = Stopwatch.StartNew();
                var (first, last) = nightsOf.Of(given);
                var limits = LimitOverrides.Read(given.GetValue(set) ?? []);
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var watches = await WatchesAsync(store, given.GetValue(watch), limits, stop);
                var nights = await store.Replay.RunAsync(watches, first, last, stop);
                var scores = ReplayScores.Of(watches.Count, nights);
                if (given.GetValue(json)) Document.Write(shell.Output, new { scores, nights });
                else
                    ReplayTables.Draw(shell, scores, nights, limits.Any, clock.Elapsed);
                return Exit.Ok;
            });
        return command;
    }

    private static async Task<IReadOnlyList<Watch>> WatchesAsync(KeptStore store, string? id, LimitOverrides limits, CancellationToken stop)
    {
        if (id is null) return [.. (await store.Watches.ListAsync(cancellationToken: stop)).Select(limits.Apply)];
        var one =
            await store.Watches.FindAsync(id, stop)
            ?? throw new BadInputException($"--watch: there is no watch '{id}'; 'watch list' names them.");
        return [limits.Apply(one)];
    }
}
