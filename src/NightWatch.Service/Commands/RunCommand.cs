using System.CommandLine;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;

namespace NightWatch.Service.Commands;

/// <summary>The service itself.</summary>
internal static class RunCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var command = new Command("run", "The service: keeps watch until it is stopped.");
        command.SetAction(async (given, stop) =>
        {
            await ServiceHost.RunAsync(AllSettings.ReadValid(shell.Directory, given.GetValue(config)), shell.Clock, stop);
            return Exit.Ok;
        });
        return command;
    }
}
