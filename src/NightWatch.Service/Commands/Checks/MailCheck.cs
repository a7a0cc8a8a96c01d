using NightWatch.Delivery.Mail;

namespace NightWatch.Service.Commands.Checks;

/// <summary>The mail server lets us in.</summary>
internal static class MailCheck
{
    public static async Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var mail = bench.Settings.Mail;
        if (mail.Faults().Count > 0) return [Finding.Fault("mail", "not tried, as its configuration is wrong.")];
        if (!mail.IsSmtp) return [Finding.Ok("mail", $"letters go into the folder {mail.Folder}; nothing is sent.")];
        var transport = MailTransports.Create(mail, TimeProvider.System);
        try
        {
            return
            [
                await transport.CheckAsync(stop) is { } trouble
                    ? Finding.Fault("mail", trouble)
                    : Finding.Ok("mail", $"{mail.Host}:{mail.Port} lets us in."),
            ];
        }
        finally
        {
            if (transport is IAsyncDisposable closing) await closing.DisposeAsync();
        }
    }
}
