using System.Net.Sockets;
using System.Text.RegularExpressions;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;

namespace NightWatch.Delivery.Mail;

/// <summary>Reads what went wrong out of MailKit's exceptions, the server's codes (RFC 5321, RFC 3463) and the phase.</summary>
internal static partial class SmtpFailures
{
    /// <summary>Whose fault it is, and what the server said.</summary>
    public static Handover.Failed Of(Exception fault, SmtpPhase phase) =>
        fault switch
        {
            SmtpCommandException refused => Refused(refused, phase),
            AuthenticationException denied => Denied(denied),
            ServiceNotAuthenticatedException => Failed(
                FailureClass.Configuration,
                530,
                fault.Message,
                "The mail server wants authentication: set Mail:UserName and Mail:PasswordFile"),
            SslHandshakeException => Failed(
                FailureClass.Configuration,
                null,
                fault.InnerException?.Message ?? FirstSentence(fault.Message),
                "The mail server's TLS cannot be trusted"),
            NotSupportedException when phase == SmtpPhase.Connecting => Failed(
                FailureClass.Configuration,
                null,
                null,
                "The mail server does not offer STARTTLS (Mail:Security starttls); nothing is sent in the clear"),
            SocketException or ServiceNotConnectedException when phase == SmtpPhase.Connecting => Failed(
                FailureClass.Server, null, fault.Message, "The mail server cannot be reached"),
            SmtpProtocolException
            or IOException
            or TimeoutException
            or OperationCanceledException
            or SocketException
            or ServiceNotConnectedException => Broken(fault, phase),
            // A letter that cannot be put on the wire at all (a broken header, an address that needs SMTPUTF8) never will be.
            _ => phase >= SmtpPhase.Text
                ? Broken(fault, phase)
                : Failed(FailureClass.Permanent, null, fault.Message, "The letter cannot be sent as it is"),
        };

    private static Handover.Failed Broken(Exception fault, SmtpPhase phase)
    {
        var what = fault is TimeoutException or OperationCanceledException ? "did not answer in time" : "broke the connection off";
        return phase switch
        {
            SmtpPhase.Connecting => Failed(
                FailureClass.Server, null, FirstSentence(fault.Message), $"The mail server {what} before it was ready"),
            SmtpPhase.Envelope => Failed(FailureClass.Transient, null, null, $"The mail server {what} before it took the text"),
            _ => Failed(
                FailureClass.Ambiguous, null, null, $"The mail server {what} while or after it took the text: it may have the letter"),
        };
    }

    private static Handover.Failed Refused(SmtpCommandException refused, SmtpPhase phase)
    {
        var code = (int)refused.StatusCode;
        var enhanced = EnhancedCode().Match(refused.Message) is { Success: true } match ? match.Value : null;
        return new(ClassOf(refused, code, enhanced, phase), new(code, enhanced, Redaction.Of($"{code} {refused.Message}")));
    }

    private static FailureClass ClassOf(SmtpCommandException refused, int code, string? enhanced, SmtpPhase phase)
    {
        if (phase == SmtpPhase.Connecting) return code >= 500 ? FailureClass.Configuration : FailureClass.Server;
        if (code < 500) return FailureClass.Transient;

        return refused.ErrorCode switch
        {
            // The sender is the same for all letters: only its size is this letter's own fault.
            SmtpErrorCode.SenderNotAccepted => code == 552 || enhanced is "5.3.4" ? FailureClass.Permanent : FailureClass.Configuration,
            // The relay says it to every recipient until it is set right, and no letter should be given up for that.
            SmtpErrorCode.RecipientNotAccepted when refused.Message.Contains("relay", StringComparison.OrdinalIgnoreCase) =>
                FailureClass.Configuration,
            // 552 to RCPT is an old way to say 452 (RFC 5321, 4.5.3.1.10).
            SmtpErrorCode.RecipientNotAccepted when code == 552 => FailureClass.Transient,
            // A full mailbox empties, a broken route is mended.
            _ => IsSoft(enhanced) ? FailureClass.Transient : FailureClass.Permanent,
        };
    }

    private static bool IsSoft(string? enhanced) => enhanced is "5.2.2" || enhanced?.StartsWith("5.4.", StringComparison.Ordinal) == true;

    private static Handover.Failed Denied(AuthenticationException denied)
    {
        var code = LeadingCode().Match(denied.Message) is { Success: true } match
            ? int.Parse(match.Value, System.Globalization.CultureInfo.InvariantCulture)
            : (int?)null;
        return code is >= 400 and < 500
            ? Failed(FailureClass.Server, code, denied.Message, "The mail server cannot authenticate just now")
            : Failed(
                FailureClass.Configuration,
                code,
                denied.Message,
                "The mail server refuses the user name or password (Mail:UserName, Mail:PasswordFile)");
    }

    private static Handover.Failed Failed(FailureClass @class, int? code, string? detail, string sentence) =>
        new(
            @class,
            new(
                code,
                null,
                Redaction.Of(string.IsNullOrWhiteSpace(detail) ? sentence + "." : $"{sentence}: {detail.TrimEnd('.', '\r', '\n')}.")));

    private static string FirstSentence(string text) => text.Split('\n', 2)[0].Trim();

    [GeneratedRegex(@"^[245]\.\d{1,3}\.\d{1,3}")]
    private static partial Regex EnhancedCode();

    [GeneratedRegex(@"^[0-9]{3}(?=:| )")]
    private static partial Regex LeadingCode();
}
