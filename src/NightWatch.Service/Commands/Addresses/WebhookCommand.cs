using System.CommandLine;
using NightWatch.Delivery.Links;
using NightWatch.Delivery.Webhooks;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands.Addresses;

/// <summary>What a receiver of calls needs to know.</summary>
internal static class WebhookCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var url = new Argument<string>("url") { Description = "The receiver's address, as the watch names it." };
        var secret = new Command("secret", "The secret that calls to an address are signed with.") { url };
        secret.SetAction(
            async (given, stop) =>
            {
                var settings = AllSettings.ReadValid(shell.Directory, given.GetValue(config));
                if (WebhookTransport.WhyNot(given.GetRequiredValue(url), settings.Webhooks.AllowLoopback) is { } why)
                    throw new BadInputException("url: " + why);
                await using var parts = await StoredServices.OpenAsync(settings, shell.Clock, TimeProvider.System, stop);
                shell.Say(WebhookSignature.SecretOf(parts.GetRequiredService<StoredLinkSigner>(), given.GetRequiredValue(url)));
                return Exit.Ok;
            });
        return new Command("webhook", "Calls to the subscribers' own programs.") { secret };
    }
}
