using System.CommandLine;
using System.Globalization;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Store.Outbox;
using NightWatch.Words;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Operations;

/// <summary>The letters on their way, for the operator: what waits, what died and why, and what to do about it.</summary>
internal static class OutboxCommand
{
    private const int DefaultTake = 50;

    public static Command Create(Shell shell, Option<string?> config) => new("outbox", "The letters on their way.")
    {
        List(shell, config), Show(shell, config), Retry(shell, config), Drop(shell, config),
    };

    private static Command List(Shell shell, Option<string?> config)
    {
        var states = Enum.GetNames<OutboxState>().Select(name => name.ToLowerInvariant()).ToArray();
        var state = Given.Word(
            "--state", $"Only those that are {string.Join(", ", states)}; default: pending, retry, sending and dead.", states);
        var take = Given.Whole("--take", $"At most so many, the newest; default {DefaultTake}.", 1, 100_000);
        var json = Given.Json();
        var command = new Command("list", "Letters, newest first.") { state, take, json };
        command.SetAction(async (given, stop) =>
        {
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var letters = await LettersAsync(store.Outbox, given.GetValue(state), given.GetValue(take) ?? DefaultTake, stop);
            if (given.GetValue(json)) Document.Write(shell.Output, letters.Select(LetterDocument.Of));
            else OutboxTable.Draw(shell, letters);
            return Exit.Ok;
        });
        return command;
    }

    private static Command Show(Shell shell, Option<string?> config)
    {
        var id = Id();
        var eml = Given.Text("--eml", "Writes the letter as it is sent to this file.", "file");
        var json = Given.Json();
        var command = new Command("show", "One letter: where it stands, what the mail server said, its text.") { id, eml, json };
        command.SetAction(
            async (given, stop) =>
            {
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var letter = await store.Outbox.FindAsync(given.GetRequiredValue(id), stop) ?? throw Unknown(given.GetRequiredValue(id));
                var bytes = await store.Outbox.MimeAsync(letter.Id, stop);
                if (given.GetValue(eml) is { } path)
                {
                    if (bytes is not { } whole)
                        throw new BadInputException(
                            $"--eml: the text of letter {letter.Id} has gone with age; its row is all that is left.");
                    shell.WriteFile(path, "--eml", whole.ToArray());
                }

                if (given.GetValue(json)) Document.Write(shell.Output, LetterDocument.Of(letter));
                else
                    OutboxTable.Draw(shell, letter, bytes);
                return Exit.Ok;
            });
        return command;
    }

    private static Command Retry(Shell shell, Option<string?> config)
    {
        var id = new Argument<long?>("id") { Description = "Number of a dead letter.", Arity = ArgumentArity.ZeroOrOne };
        var all = new Option<bool>("--all") { Description = "Every dead letter that is still of use." };
        var command = new Command(
            "retry", "Puts a dead letter back in the queue, its attempts forgiven; the service sends it with its next tick.")
        {
            id,
            all,
        };
        command.SetAction(
            async (given, stop) =>
            {
                if ((given.GetValue(id) is null) != given.GetValue(all))
                    throw new BadInputException("outbox retry: say which; accepted: the number of one letter, or --all.");
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var now = shell.Clock.GetCurrentInstant();
                if (given.GetValue(id) is not { } one)
                {
                    shell.Say($"{await store.Outbox.ReviveAllAsync(now, stop)} letters are back in the queue.");
                    return Exit.Ok;
                }

                var letter = await store.Outbox.FindAsync(one, stop) ?? throw Unknown(one);
                if (letter.State != OutboxState.Dead)
                    throw new BadInputException($"id: letter {one} is {OutboxTable.Word(letter.State)}; accepted: a dead one.");
                if (!await store.Outbox.ReviveAsync(one, now, stop))
                    throw new BadInputException(
                        $"id: letter {one} was of use until {InstantText.Of(letter.NotAfter)}; a letter that is late beyond its use is " +
                        "never sent.");
                shell.Say($"Letter {one} is back in the queue.");
                return Exit.Ok;
            });
        return command;
    }

    private static Command Drop(Shell shell, Option<string?> config)
    {
        var id = Id();
        var command = new Command("drop", "Takes a letter out of the queue for good.") { id };
        command.SetAction(async (given, stop) =>
        {
            var one = given.GetRequiredValue(id);
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var letter = await store.Outbox.FindAsync(one, stop) ?? throw Unknown(one);
            if (await store.Outbox.DropAsync(one, "dropped by the operator", shell.Clock.GetCurrentInstant(), stop) == 0)
                throw new BadInputException($"id: letter {one} is {OutboxTable.Word(letter.State)}; accepted: one that waits or is dead.");
            shell.Say($"Letter {one} is not sent.");
            return Exit.Ok;
        });
        return command;
    }

    private static async Task<IReadOnlyList<OutboxEntry>> LettersAsync(OutboxStore outbox, string? state, int take, CancellationToken stop)
    {
        OutboxState[] wanted = state is null
            ? [OutboxState.Pending, OutboxState.Retry, OutboxState.Sending, OutboxState.Dead]
            : [Enum.Parse<OutboxState>(state, ignoreCase: true)];
        var letters = new List<OutboxEntry>();
        foreach (var one in wanted) letters.AddRange(await outbox.ListAsync(one, take, stop));
        return [.. letters.OrderByDescending(letter => letter.Id).Take(take)];
    }

    private static Argument<long> Id() => new("id") { Description = "Number of the letter, as 'outbox list' shows it." };

    private static BadInputException Unknown(long id) =>
        new($"id: there is no letter {id.ToString(CultureInfo.InvariantCulture)}; accepted: a number that 'outbox list' shows.");
}
