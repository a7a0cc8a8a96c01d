using System.CommandLine;
using NightWatch.Pages.Calendars;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands.Addresses;

/// <summary>The calendar feeds: whose address is which, and a new one where the old got into wrong hands.</summary>
internal static class CalendarCommand
{
    public static Command Create(Shell shell, Option<string?> config) =>
        new("calendar", "The subscribers' calendar feeds.")
        {
            Of("link", "The address of a subscriber's feed.", shell, config, (feeds, address, stop) => feeds.LinkAsync(address, stop)),
            Of(
                "revoke",
                "Ends the address of a subscriber's feed and gives a new one.",
                shell,
                config,
                (feeds, address, stop) => feeds.RevokeAsync(address, stop)),
        };

    private static Command Of(
        string name,
        string description,
        Shell shell,
        Option<string?> config,
        Func<CalendarFeeds, string, CancellationToken, Task<Uri?>> action)
    {
        var address = new Argument<string>("address") { Description = "The subscriber's mail address." };
        var command = new Command(name, description) { address };
        command.SetAction(
            async (given, stop) =>
            {
                await using var parts = await StoredServices.OpenAsync(
                    AllSettings.ReadValid(shell.Directory, given.GetValue(config)), shell.Clock, TimeProvider.System, stop);
                var link = await action(parts.GetRequiredService<CalendarFeeds>(), given.GetRequiredValue(address), stop);
                shell.Say(
                    link?.AbsoluteUri
                        ?? throw new BadInputException(
                            "configuration: Service:PagesBase is empty, so nobody could fetch a feed; accepted: the address of the pages.")
                );
                return Exit.Ok;
            });
        return command;
    }
}
