using System.CommandLine;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Words.Documents;
using Spectre.Console;

namespace NightWatch.Service.Commands.Operations;

/// <summary>What the service does once a day by itself, at once: after a setting of retention was lowered.</summary>
internal static class PruneCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var json = Given.Json();
        var command = new Command(
            "prune", "Lets rows go that are older than the settings Database:Keep... say; the service does it once a day.")
        {
            json,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var rule = AllSettings.ReadValid(shell.Directory, given.GetValue(config)).Database.Retention();
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var removed = await store.Retention.ApplyAsync(rule, shell.Clock.GetCurrentInstant(), stop);
                if (given.GetValue(json)) Document.Write(shell.Output, removed);
                else
                    Draw(shell, removed);
                return Exit.Ok;
            });
        return command;
    }

    private static void Draw(Shell shell, Store.Removed removed) =>
        shell.Draw(console =>
        {
            var table = new Table().Border(TableBorder.Simple).AddColumn("Rows gone").AddColumn(new TableColumn("").RightAligned());
            foreach (var (name, count) in System.Text.Json.JsonSerializer.SerializeToNode(removed, Document.Options)!.AsObject())
                table.AddRow(name, count!.ToString());
            console.Write(table);
        });
}
