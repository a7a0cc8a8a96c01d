using System.CommandLine;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Records;

/// <summary>Every verdict of a watch with what came, for a spreadsheet or another program.</summary>
internal static class VerdictsCommand
{
    private const string StandardOutput = "-";

    public static Command Create(Shell shell, Option<string?> config)
    {
        var watch = Given.Text("--watch", "The watch's id.", "id").Required();
        var nights = new NightRange();
        var csv = Given.Text("--csv", "File to write as CSV (RFC 4180); - for standard output.", "file");
        var json = Given.Json();
        var command = new Command(
            "verdicts", "Every verdict of a watch with lead, probability, feed, version of what was learnt and what came.")
        {
            watch,
            nights.From,
            nights.To,
            csv,
            json,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var (id, path) = (given.Needed(watch), given.GetValue(csv));
                if (path is null == !given.GetValue(json))
                    throw new BadInputException("--csv: accepted: either --csv FILE (or -) or --json.");
                var (first, last) = nights.Of(given);
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var record = await store.Record.ReadAsync(id, first, last, stop);
                if (record.Nights.Count == 0 && await store.Watches.FindAsync(id, stop) is null)
                    throw new BadInputException($"--watch: there is no watch '{id}'; 'watch list' names them.");
                if (path is null) Document.Write(shell.Output, VerdictTable.Of(record));
                else if (path == StandardOutput) shell.Output.Write(VerdictTable.Csv(record));
                else
                    shell.WriteFile(path, "--csv", VerdictTable.Csv(record));
                return Exit.Ok;
            });
        return command;
    }
}
