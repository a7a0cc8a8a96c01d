namespace NightWatch.Delivery.Mail;

/// <summary>Chooses the transport that the options name.</summary>
public static class MailTransports
{
    /// <param name="options">Without faults.</param>
    /// <param name="time">For time-outs and the age of the connection.</param>
    public static IMailTransport Create(MailOptions options, TimeProvider time) =>
        options.IsSmtp ? new SmtpTransport(options, time) : new FolderTransport(options.Folder);
}
