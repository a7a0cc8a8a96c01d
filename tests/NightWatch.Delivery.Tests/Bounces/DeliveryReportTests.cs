using System.Text;
using MimeKit;
using NightWatch.Delivery.Bounces;

namespace NightWatch.Delivery.Tests.Bounces;

/// <summary>Reports as RFC 3464 shapes them, in the manners of several mail servers; the addresses are invented.</summary>
public sealed class DeliveryReportTests
{
    private const string Failed = """
        Reporting-MTA: dns; mx.example.org
        X-Postfix-Queue-ID: 4F1A2B
        Arrival-Date: Fri, 4 Jun 2027 07:00:00 +0200 (CEST)

        Final-Recipient: rfc822; ilse@example.org
        Original-Recipient: rfc822;Ilse.Vermaak@example.org
        Action: failed
        Status: 5.1.1
        Remote-MTA: dns; mail.example.org
        Diagnostic-Code: smtp; 550 5.1.1 <ilse@example.org>: Recipient address rejected:
            User unknown in virtual mailbox table
        """;

    [Fact]
    public void A_report_names_the_letter_the_recipients_and_the_status()
    {
        var reports = DeliveryReport.Of(Message(Failed, Returned));
        Assert.Equal(["Ilse.Vermaak@example.org", "ilse@example.org"], reports.Select(report => report.Recipient));
        Assert.All(
            reports, report => Assert.Equal(("letter.1@nightwatch.example.org", "5.1.1"), (report.MessageId, report.Reply.Enhanced)));
        Assert.DoesNotContain("ilse@", reports[0].Reply.Text, StringComparison.Ordinal);
        Assert.Contains("User unknown", reports[0].Reply.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_header_alone_names_the_letter_too() =>
        Assert.Equal(
            "letter.1@nightwatch.example.org",
            DeliveryReport
                .Of(
                    Message(
                        Failed, "Content-Type: text/rfc822-headers\n\nSubject: GO tonight\nMessage-Id: <letter.1@nightwatch.example.org>\n")
                )[0]
                .MessageId);

    [Theory]
    [InlineData("delayed", "5.4.4", "4.4.4")]
    [InlineData("delayed", "4.4.1", "4.4.1")]
    [InlineData("failed", "5.2.2 (mailbox full)", "5.2.2")]
    public void A_delay_is_no_refusal_whatever_its_number(string action, string status, string read) =>
        Assert.Equal(
            read,
            DeliveryReport
                .Of(
                    Message(
                        $"Reporting-MTA: dns; mx.example.org\n\nFinal-Recipient: rfc822; ilse@example.org\nAction: {action}\nStatus: " +
                        $"{status}\n",
                        Returned))
                .Single()
                .Reply.Enhanced);

    [Theory]
    [InlineData("delivered", "2.0.0")]
    [InlineData("relayed", "2.0.0")]
    [InlineData("failed", "nonsense")]
    public void What_went_well_or_says_nothing_is_no_report(string action, string status) =>
        Assert.Empty(
            DeliveryReport.Of(
                Message(
                    $"Reporting-MTA: dns; mx.example.org\n\nFinal-Recipient: rfc822; ilse@example.org\nAction: {action}\nStatus: " +
                    $"{status}\n",
                    Returned)));

    [Theory]
    [InlineData("Subject: hello\n\nI am on holiday.\n")]
    [InlineData("Subject: no parts\nContent-Type: multipart/report; report-type=delivery-status; boundary=b\n\n--b--\n")]
    [InlineData("Content-Type: message/delivery-status\n\n\n\n\n")]
    public void Anything_else_is_none(string text) => Assert.Empty(DeliveryReport.Of(Parse(text)));

    [Fact]
    public void A_report_that_names_no_letter_or_a_recipient_that_is_none_is_none()
    {
        Assert.Empty(DeliveryReport.Of(Message(Failed, "Content-Type: text/plain\n\nMessage-ID: <letter.1@nightwatch.example.org>\n")));
        Assert.Empty(
            DeliveryReport.Of(Message("Reporting-MTA: dns; x\n\nFinal-Recipient: rfc822; \nAction: failed\nStatus: 5.1.1\n", Returned)));
    }

    [Fact]
    public void A_long_diagnostic_is_cut() =>
        Assert.True(
            DeliveryReport
                .Of(
                    Message(
                        $"Reporting-MTA: dns; x\n\nFinal-Recipient: rfc822; ilse@example.org\nAction: failed\nStatus: " +
                        $"5.1.1\nDiagnostic-Code: smtp; {new string('x', 5000)}\n",
                        Returned))
                .Single()
                .Reply.Text.Length <= 301);

    private const string Returned =
        "Content-Type: message/rfc822\n\nFrom: NightWatch <watch@nightwatch.example.org>\nMessage-ID: " +
        "<letter.1@nightwatch.example.org>\nSubject: GO tonight\n\nClear skies.\n";

    private static MimeMessage Message(string status, string returned) =>
        Parse(
            $"From: MAILER-DAEMON@example.org\nTo: watch@nightwatch.example.org\nSubject: Undelivered Mail Returned to " +
            "Sender\nAuto-Submitted: auto-replied\nMIME-Version: 1.0\n"
                + $"Content-Type: multipart/report; report-type=delivery-status; boundary=b\n\n--b\nContent-Type: " +
                    $"text/plain\n\nSorry.\n\n--b\nContent-Type: message/delivery-status\n\n{status}\n\n--b\n{returned}\n--b--\n");

    private static MimeMessage Parse(string text) =>
        MimeMessage.Load(new MemoryStream(Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\r\n"))), TestContext.Current.CancellationToken);
}
