using System.CommandLine;
using System.Text;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Terminal;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Keeping;

/// <summary>The standing orders: add, list, show, pause, remove, and an example to start from.</summary>
internal static class WatchCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var command = new Command("watch", "The standing orders.")
        {
            Add(shell, config), List(shell, config), Show(shell, config), Pause(shell, config), Remove(shell, config), Example(shell),
        };
        foreach (var wish in SteeringCommands.Create(shell, config)) command.Add(wish);
        return command;
    }

    private static Command Add(Shell shell, Option<string?> config)
    {
        var file = new Argument<string>("file") { Description = "A watch file; 'watch example' prints one." };
        var command = new Command("add", "Saves a watch and its site; those with the same ids are replaced.") { file };
        command.SetAction(async (given, stop) =>
        {
            var watch = ReadFile(shell, given.GetRequiredValue(file), "file");
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var now = shell.Clock.GetCurrentInstant();
            await store.Watches.PutAsync(watch, now, stop);
            // A running service looks at the due table only; without this it would notice the watch hours later.
            await store.Planner.PlanAsync(watch.Subscriber.Address, now, stop);
            shell.Say($"Watch {watch.Id} on {watch.Site.Name} is kept for {watch.Subscriber.Address}.");
            return Exit.Ok;
        });
        return command;
    }

    private static Command List(Shell shell, Option<string?> config)
    {
        var json = Given.Json();
        var command = new Command("list", "All watches.") { json };
        command.SetAction(async (given, stop) =>
        {
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var watches = await store.Watches.ListAsync(cancellationToken: stop);
            if (given.GetValue(json)) Document.Write(shell.Output, watches);
            else KeptTables.Watches(shell, watches, shell.Clock.GetCurrentInstant());
            return Exit.Ok;
        });
        return command;
    }

    private static Command Show(Shell shell, Option<string?> config)
    {
        var id = Id();
        var json = Given.Json();
        var command = new Command("show", "One watch, as its file.") { id, json };
        command.SetAction(
            async (given, stop) =>
            {
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                Document.Write(
                    shell.Output,
                    await store.Watches.FindAsync(given.GetRequiredValue(id), stop) ?? throw None(store, given.GetRequiredValue(id)));
                return Exit.Ok;
            });
        return command;
    }

    private static Command Pause(Shell shell, Option<string?> config)
    {
        var id = Id();
        var resume = new Option<bool>("--resume") { Description = "Take it up again." };
        var until = Given.Date("--until", "Rest until this local date, YYYY-MM-DD, and then look again.");
        var command = new Command("pause", "Keeps a watch without looking at it; its unsent letters are held back for good.")
        {
            id,
            resume,
            until,
        };
        command.SetAction(
            async (given, stop) =>
            {
                if (given.GetValue(until) is { } date)
                {
                    if (given.GetValue(resume)) throw new BadInputException("--until and --resume are both given; accepted: one of them.");
                    return await SteeringCommands.PauseUntilAsync(shell, given.GetValue(config), given.GetRequiredValue(id), date, stop);
                }

                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var (name, pause, now) = (given.GetRequiredValue(id), !given.GetValue(resume), shell.Clock.GetCurrentInstant());
                if (!await store.Watches.PauseAsync(name, pause, now, stop)) throw Unknown(name);
                if (!pause) await store.Planner.PlanAsync((await store.Watches.FindAsync(name, stop))!.Subscriber.Address, now, stop);
                shell.Say($"Watch {name} is {(pause ? "paused" : "on again")}.");
                return Exit.Ok;
            });
        return command;
    }

    private static Command Remove(Shell shell, Option<string?> config)
    {
        var id = Id();
        var command = new Command("remove", "Removes a watch, not its site.") { id };
        command.SetAction(
            async (given, stop) =>
            {
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                if (!await store.Watches.RemoveAsync(given.GetRequiredValue(id), shell.Clock.GetCurrentInstant(), stop))
                    throw Unknown(given.GetRequiredValue(id));
                shell.Say($"Watch {given.GetRequiredValue(id)} is removed.");
                return Exit.Ok;
            });
        return command;
    }

    private static Command Example(Shell shell)
    {
        var command = new Command("example", "Prints a watch file with a comment at every field.");
        command.SetAction(_ =>
        {
            shell.Output.Write(Encoding.UTF8.GetBytes(WatchFile.Example));
            return Exit.Ok;
        });
        return command;
    }

    /// <summary>Reads a watch file that an option or argument named.</summary>
    /// <exception cref="BadInputException">Every fault, in one line.</exception>
    public static Watch ReadFile(Shell shell, string path, string option) =>
        KeptFiles.ValueOf(WatchFile.Read(Encoding.UTF8.GetString(shell.ReadFile(path, option)), path));

    private static Argument<string> Id() => new("id") { Description = "The watch's id." };

    private static BadInputException None(KeptStore store, string id) =>
        store.Watches.Fault(id) is { } fault
            ? new BadInputException($"id: the stored {fault.Name} cannot be read: {fault.Why}")
            : Unknown(id);

    public static BadInputException Unknown(string id) => new($"id: there is no watch '{id}'; 'watch list' names them.");
}
