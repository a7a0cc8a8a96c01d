using System.CommandLine;
using NightWatch.Planning.Chance;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Records;

/// <summary>Was it right? The calls for one watch or one site against what came.</summary>
internal static class ScoresCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var watch = Given.Text("--watch", "The watch's id.", "id");
        var site = Given.Text("--site", "A site's id: all watches on it together.", "id");
        var nights = new NightRange();
        var json = Given.Json();
        var command = new Command("scores", "How often the calls were right, by nights ahead, with how far off that may be by chance.")
        {
            watch,
            site,
            nights.From,
            nights.To,
            json,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var (one, place) = (given.GetValue(watch), given.GetValue(site));
                if (one is null == place is null) throw new BadInputException("--watch: accepted: either --watch ID or --site ID.");
                var (first, last) = nights.Of(given);
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var records = new List<WatchRecord>();
                foreach (var id in one is not null ? [one] : await OfSiteAsync(store, place!, stop))
                {
                    var record = await store.Record.ReadAsync(id, first, last, stop);
                    // Of a watch that was removed the record stays a while, and nobody knows its free evenings.
                    var kept = await store.Watches.FindAsync(id, stop);
                    if (kept is null && record.Nights.Count == 0)
                        throw new BadInputException($"--watch: there is no watch '{id}'; 'watch list' names them.");
                    records.Add(kept is null ? record : record.ForReaderOf(kept));
                }

                var scores = RecordScores.Of(records);
                var learnt = await store.Learnt.NewestAsync(ChancePrior.Shipped, stop);
                if (given.GetValue(json)) Document.Write(shell.Output, new { scores, learnt = learnt.Select(LearntRow.Of) });
                else
                    ScoresTables.Draw(shell, scores, learnt);
                return Exit.Ok;
            });
        return command;
    }

    private static async Task<string[]> OfSiteAsync(KeptStore store, string site, CancellationToken stop)
    {
        if (await store.Sites.FindAsync(site, stop) is null)
            throw new BadInputException($"--site: there is no site '{site}'; 'site list' names them.");
        return
        [
            .. (await store.Watches.ListAsync(cancellationToken: stop)).Where(watch => watch.Site.Id == site).Select(watch => watch.Id),
        ];
    }
}
