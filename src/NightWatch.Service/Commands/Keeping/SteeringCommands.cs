using System.CommandLine;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store.Outbox;
using NightWatch.Watchkeeping.Steering;
using NodaTime;

namespace NightWatch.Service.Commands.Keeping;

/// <summary>
/// What a subscriber may do about a night or a watch, for whoever keeps the service: snooze, unsnooze, switch, unsubscribe.
/// </summary>
internal static class SteeringCommands
{
    public static IEnumerable<Command> Create(Shell shell, Option<string?> config) =>
        [
            OfNight(
                "snooze",
                "No letters about one night, but for the one that takes it out of the calendar should it turn off.",
                shell,
                config,
                (steering, about, stop) => steering.SnoozeNightAsync(about.WatchId, about.Night, stop)),
            OfNight(
                "unsnooze",
                "Letters about a snoozed night again.",
                shell,
                config,
                (steering, about, stop) => steering.UnsnoozeNightAsync(about.WatchId, about.Night, stop)),
            Switch(shell, config),
            Unsubscribe(shell, config),
        ];

    /// <summary>Lets the watch rest until a date.</summary>
    public static Task<int> PauseUntilAsync(Shell shell, string? configPath, string id, LocalDate until, CancellationToken stop) =>
        SteerAsync(shell, configPath, steering => steering.PauseUntilAsync(id, until, stop), stop);

    private static Command OfNight(
        string name,
        string description,
        Shell shell,
        Option<string?> config,
        Func<WatchSteering, WatchNight, CancellationToken, Task<SteeringOutcome>> wish)
    {
        var id = Id("id", "The watch's id.");
        var night = Given.Date("--night", "Local date of the evening, YYYY-MM-DD.").Required();
        var command = new Command(name, description) { id, night };
        command.SetAction(
            (given, stop) =>
                SteerAsync(
                    shell,
                    given.GetValue(config),
                    steering => wish(steering, new WatchNight(given.GetRequiredValue(id), given.Needed(night)), stop),
                    stop));
        return command;
    }

    private static Command Switch(Shell shell, Option<string?> config)
    {
        var (from, to) = (
            Id("from", "Id of the watch whose night gives way."),
            Id("to", "Id of the watch whose night is taken instead; may be the same."));
        var night = Given.Date("--night", "Local date of the evening that gives way, YYYY-MM-DD.").Required();
        var instead = Given.Date("--to-night", "Local date of the evening taken instead; default the same.");
        var command = new Command("switch", "From one night to another: the first leaves the calendar, the second comes into it.")
        {
            from,
            to,
            night,
            instead,
        };
        command.SetAction(
            (given, stop) =>
            {
                var left = new WatchNight(given.GetRequiredValue(from), given.Needed(night));
                var taken = new WatchNight(given.GetRequiredValue(to), given.GetValue(instead) ?? left.Night);
                return SteerAsync(shell, given.GetValue(config), steering => steering.SwitchNightAsync(left, taken, stop), stop);
            });
        return command;
    }

    private static Command Unsubscribe(Shell shell, Option<string?> config)
    {
        var id = Id("id", "The watch's id.");
        var command = new Command("unsubscribe", "No letters from a watch any more; it is kept, paused.") { id };
        command.SetAction(
            (given, stop) =>
                SteerAsync(shell, given.GetValue(config), steering => steering.UnsubscribeAsync(given.GetRequiredValue(id), stop), stop));
        return command;
    }

    private static async Task<int> SteerAsync(
        Shell shell, string? configPath, Func<WatchSteering, Task<SteeringOutcome>> wish, CancellationToken stop)
    {
        await using var parts = await StoredServices.OpenAsync(
            AllSettings.ReadValid(shell.Directory, configPath), shell.Clock, TimeProvider.System, stop);
        shell.Say(
            await wish(parts.GetRequiredService<WatchSteering>()) switch
            {
                SteeringOutcome.Done done => done.Says,
                SteeringOutcome.Refused refused => throw new BadInputException(refused.Why),
                SteeringOutcome.NoSuchWatch none => throw WatchCommand.Unknown(none.WatchId),
                _ => throw new InvalidOperationException("A wish ends in one of its three outcomes."),
            });
        return Exit.Ok;
    }

    private static Argument<string> Id(string name, string description) => new(name) { Description = description };
}
