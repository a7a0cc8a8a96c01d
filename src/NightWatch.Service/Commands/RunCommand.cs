using System.CommandLine;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands;

/// <summary>The service itself.</summary>
internal static class RunCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var command = new Command("run", "The service: keeps watch until it is stopped.");
        command.SetAction(async (given, stop) =>
        {
            var settings = AllSettings.ReadValid(shell.Directory, given.GetValue(config));
            try
            {
                await ServiceHost.RunAsync(settings, shell.Clock, stop);
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                // Stopped while it was starting: as asked.
            }

            return Exit.Ok;
        });
        return command;
    }
}
