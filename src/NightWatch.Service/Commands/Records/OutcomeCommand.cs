using System.CommandLine;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Store.Outcomes;
using NightWatch.Words;
using NightWatch.Words.Documents;
using Spectre.Console;

namespace NightWatch.Service.Commands.Records;

/// <summary>What the nights were like: add, list.</summary>
internal static class OutcomeCommand
{
    public static Command Create(Shell shell, Option<string?> config) =>
        new("outcome", "What the nights were really like.") { Add(shell, config), List(shell, config) };

    private static Command Add(Shell shell, Option<string?> config)
    {
        var watch = Given.Text("--watch", "The watch's id.", "id").Required();
        var night = Given.Date("--night", "Local date of the evening, YYYY-MM-DD.").Required();
        var was = Given.Word("--was", "What it was like.", [.. OutcomeWords.All]).Required();
        var command = new Command("add", "Says what a night was like, as the debrief's answer does; the last word counts.")
        {
            watch,
            night,
            was,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var (id, date, word, now) = (given.Needed(watch), given.Needed(night), given.Needed(was), shell.Clock.GetCurrentInstant());
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var kept = await store.Watches.FindAsync(id, stop) ?? throw Unknown(id);
                if (date > now.InZone(kept.Site.Zone).Date)
                    throw new BadInputException($"--night: {date:R} has not come yet; accepted: the date of an evening that has.");
                await store.Outcomes.PutAsync(id, date, OutcomeWords.Of(word)!.Value, OutcomeSource.Debrief, now, stop);
                shell.Say(Speech.To(kept).Language.OutcomeKept(date, kept.Site.Name, word));
                return Exit.Ok;
            });
        return command;
    }

    private static Command List(Shell shell, Option<string?> config)
    {
        var watch = Given.Text("--watch", "The watch's id.", "id").Required();
        var nights = new NightRange();
        var json = Given.Json();
        var command = new Command("list", "What every source says of a watch's nights.") { watch, nights.From, nights.To, json };
        command.SetAction(async (given, stop) =>
        {
            var (id, (first, last)) = (given.Needed(watch), nights.Of(given));
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var outcomes = await store.Outcomes.OfWatchAsync(id, first, last, stop);
            if (outcomes.Count == 0 && await store.Watches.FindAsync(id, stop) is null) throw Unknown(id);
            if (given.GetValue(json)) Document.Write(shell.Output, outcomes);
            else Draw(shell, outcomes);
            return Exit.Ok;
        });
        return command;
    }

    private static void Draw(Shell shell, IReadOnlyList<OutcomeRecord> outcomes) =>
        shell.Draw(console =>
        {
            var table = new Table().Border(TableBorder.Simple).AddColumn("Night").AddColumn("Was").AddColumn("Says").AddColumn("Note");
            foreach (var outcome in outcomes)
                table.AddRow(
                    new Text($"{outcome.Night:R}"),
                    new Text(outcome.Outcome.Word()),
                    new Text(outcome.Source.Word()),
                    new Text(outcome.Note ?? ""));
            console.Write(table);
        });

    private static BadInputException Unknown(string id) => new($"--watch: there is no watch '{id}'; 'watch list' names them.");
}
