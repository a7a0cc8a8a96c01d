using NightWatch.Service.Mail;
using NightWatch.Service.Settings;

namespace NightWatch.Service.Commands.Checks;

/// <summary>The mail server lets us in.</summary>
internal static class MailCheck
{
    public static async Task<Finding> RunAsync(AllSettings settings, Shell shell, CancellationToken stop)
    {
        if (settings.Mail.Faults().Count > 0) return new Finding("mail", false, "not tried, as its configuration is wrong.");
        var transport = MailTransports.Create(settings.Mail, TimeProvider.System);
        try
        {
            return await transport.CheckAsync(stop) is { } trouble
                ? new Finding("mail", false, trouble)
                : new Finding("mail", true, settings.Mail.Transport == "smtp" ? $"{settings.Mail.Host}:{settings.Mail.Port} lets us in." : $"letters go into the folder {settings.Mail.Folder}; nothing is sent.");
        }
        finally
        {
            if (transport is IAsyncDisposable closing) await closing.DisposeAsync();
            else (transport as IDisposable)?.Dispose();
        }
    }
}
