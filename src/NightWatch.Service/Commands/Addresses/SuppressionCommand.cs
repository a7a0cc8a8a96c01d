using System.CommandLine;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store.Suppression;
using NightWatch.Words;
using NightWatch.Words.Documents;
using Spectre.Console;

namespace NightWatch.Service.Commands.Addresses;

/// <summary>The addresses that refuse letters: list, add, remove.</summary>
internal static class SuppressionCommand
{
    public static Command Create(Shell shell, Option<string?> config) =>
        new("suppression", "The addresses that refuse letters and so get none.")
        {
            List(shell, config),
            Add(shell, config),
            Remove(shell, config),
        };

    private static Command List(Shell shell, Option<string?> config)
    {
        var json = Given.Json();
        var command = new Command("list", "All of them, with reason and date.") { json };
        command.SetAction((given, stop) => WithAsync(shell, given.GetValue(config), async store =>
        {
            var all = await store.ListAsync(stop);
            if (given.GetValue(json)) Document.Write(shell.Output, all);
            else Draw(shell, all);
        }, stop));
        return command;
    }

    private static Command Add(Shell shell, Option<string?> config)
    {
        var address = Address();
        var command = new Command("add", "No letters to this address any more; unsent ones stay unsent.") { address };
        command.SetAction((given, stop) => WithAsync(shell, given.GetValue(config), async store =>
        {
            await store.AddAsync(given.GetRequiredValue(address), "put in by the operator", shell.Clock.GetCurrentInstant(), stop);
            shell.Say($"{given.GetRequiredValue(address)} gets no letters any more.");
        }, stop));
        return command;
    }

    private static Command Remove(Shell shell, Option<string?> config)
    {
        var address = Address();
        var command = new Command("remove", "Letters to this address again; its refusals are forgotten.") { address };
        command.SetAction(
            (given, stop) =>
                WithAsync(
                    shell,
                    given.GetValue(config),
                    async store =>
                    {
                        if (!await store.RemoveAsync(given.GetRequiredValue(address), stop))
                            throw new BadInputException(
                                $"address: '{given.GetRequiredValue(address)}' is not suppressed; 'suppression list' names those that are."
                            );
                        shell.Say($"{given.GetRequiredValue(address)} gets letters again.");
                    },
                    stop));
        return command;
    }

    private static void Draw(Shell shell, IReadOnlyList<Suppressed> all) => shell.Draw(console =>
    {
        if (all.Count == 0)
        {
            console.WriteLine("No address refuses letters.");
            return;
        }

        var table = new Table()
            .Border(TableBorder.Simple)
            .AddColumn("Address")
            .AddColumn("Since")
            .AddColumn("Code")
            .AddColumn("Reason");
        foreach (var one in all)
            table.AddRow(
                new Text(one.Address),
                new Text(Speech.ToAnybody.Clock.Date(one.At.InUtc().Date)),
                new Text(one.Code ?? "-"),
                new Text(one.Reason));
        console.Write(table);
    });

    private static async Task<int> WithAsync(Shell shell, string? configPath, Func<SuppressionStore, Task> action, CancellationToken stop)
    {
        await using var parts = await StoredServices.OpenAsync(
            AllSettings.ReadValid(shell.Directory, configPath), shell.Clock, TimeProvider.System, stop);
        await action(parts.GetRequiredService<SuppressionStore>());
        return Exit.Ok;
    }

    private static Argument<string> Address() => new("address") { Description = "A mail address." };
}
