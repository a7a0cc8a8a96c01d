using System.CommandLine;
using System.CommandLine.Help;
using NightWatch.Service.Commands.Addresses;
using NightWatch.Service.Commands.Archives;
using NightWatch.Service.Commands.Checks;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Commands.Letters;
using NightWatch.Service.Commands.Operations;
using NightWatch.Service.Commands.Plans;
using NightWatch.Service.Commands.Records;
using NightWatch.Service.Commands.Replays;
using NightWatch.Service.Commands.Seasons;
using NightWatch.Service.Commands.Simulations;
using NightWatch.Service.Commands.SkyNights;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands;

/// <summary>All commands, and what becomes of a fault: one line on standard error and the exit code.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command.</summary>
    /// <returns>0, 1 for a failure, 2 for bad input.</returns>
    public static async Task<int> RunAsync(string[] args, Shell shell)
    {
        var config = new Option<string?>("--config")
        {
            Description = "Configuration file, over appsettings.json of this folder.",
            Recursive = true,
        };
        var root = new RootCommand("NightWatch keeps the watch over your dark sites and writes when a night is on.")
        {
            config,
            SkyCommand.Create(shell),
            PlanCommand.Create(shell),
            SeasonCommand.Create(shell),
            RehearseCommand.Create(shell),
            VerifySimulatedCommand.Create(shell),
            VerifyArchiveCommand.Create(shell),
            FeedCommand.Create(shell, config),
            RunCommand.Create(shell, config),
            WatchCommand.Create(shell, config),
            SiteCommand.Create(shell, config),
            LetterCommand.Create(shell, config),
            CalendarCommand.Create(shell, config),
            SuppressionCommand.Create(shell, config),
            WebhookCommand.Create(shell, config),
            OutcomeCommand.Create(shell, config),
            VerdictsCommand.Create(shell, config),
            ScoresCommand.Create(shell, config),
            ReplayCommand.Create(shell, config),
            CheckCommand.Create(shell, config),
            OutboxCommand.Create(shell, config),
            BackupCommand.CreateBackup(shell, config),
            BackupCommand.CreateRestore(shell, config),
            PruneCommand.Create(shell, config),
        };
        root.SetAction(given => new HelpAction().Invoke(given));
        AllSettings.TakeZones(shell.Directory, ConfigIn(args));
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0) return Refuse(shell, parsed.Errors[0].Message);
        await using var help = new StreamWriter(shell.Output, leaveOpen: true);
        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                Output = help,
                Error = shell.Error,
                // Its own two seconds would end a service in the middle of a letter; how long a stop may take is Service:StopSeconds.
                ProcessTerminationTimeout = TimeSpan.FromSeconds(ServiceOptions.MostStopSeconds + 30),
            });
        }
        catch (BadInputException refused)
        {
            return Refuse(shell, refused.Message);
        }
        catch (OperationCanceledException)
        {
            return Fail(shell, "stopped.");
        }
        catch (Exception failure)
        {
            // Whatever else comes up is ours and no input's: the line for who calls, the trace for who mends.
            if (AllSettings.LogsDebug(shell.Directory, ConfigIn(args))) await shell.Error.WriteLineAsync(failure.ToString());
            return Fail(shell, failure.Message);
        }
    }

    private static string? ConfigIn(string[] args)
    {
        const string Option = "--config";
        var at = Array.FindIndex(args, arg => arg == Option || arg.StartsWith(Option + "=", StringComparison.Ordinal));
        if (at < 0) return null;
        return args[at] == Option ? args.ElementAtOrDefault(at + 1) : args[at][(Option.Length + 1)..];
    }

    private static int Refuse(Shell shell, string message)
    {
        shell.Error.WriteLine(OneLine(message));
        return Exit.BadInput;
    }

    private static int Fail(Shell shell, string message)
    {
        shell.Error.WriteLine(OneLine(message));
        return Exit.Failure;
    }

    private static string OneLine(string message) =>
        "nightwatch: " + string.Join(' ', message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
