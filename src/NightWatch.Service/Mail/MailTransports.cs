using NodaTime;

namespace NightWatch.Service.Mail;

/// <summary>Chooses the transport that the options name.</summary>
public static class MailTransports
{
    public static IMailTransport Create(MailOptions options, IClock clock, TimeProvider time, ILoggerFactory logs) => throw new NotImplementedException();
}
