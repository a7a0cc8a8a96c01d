using System.Text;
using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Store.Outbox;
using NightWatch.Store.Tests.Databases;

namespace NightWatch.Store.Tests.Outbox;

public sealed class OutboxDraftTests
{
    [Fact]
    public void A_frozen_letter_is_seven_bit_with_network_line_ends_and_reads_back_the_same()
    {
        var draft = OutboxDraft.Of(Letter(), [new("one", Given.Night)], Given.Now);

        var bytes = draft.Mime.ToArray();
        Assert.All(bytes, value => Assert.InRange(value, (byte)1, (byte)127));
        Assert.DoesNotContain(
            "\n", Encoding.ASCII.GetString(bytes).Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var read = MimeMessage.Load(new MemoryStream(bytes), TestContext.Current.CancellationToken);
        Assert.Equal("Go – Windmill Bend", read.Subject);
        Assert.Equal("Sternklar über dem Fluß.", read.TextBody!.TrimEnd());
        Assert.Equal(
            ("key", read.MessageId, "ilse@example.org", "Outlook"), (draft.DedupeKey, draft.MessageId, draft.Recipient, draft.Kind));
    }

    [Fact]
    public void A_letter_goes_to_exactly_one_recipient()
    {
        var letter = Letter();
        letter.Message.Cc.Add(MailboxAddress.Parse("sipho@example.org"));

        Assert.Throws<ArgumentException>(() => OutboxDraft.Of(letter, [], Given.Now));
    }

    private static Letter Letter()
    {
        var message = new MimeMessage
        {
            Subject = "Go – Windmill Bend",
            MessageId = "a1@nightwatch.example.org",
            Body = new TextPart("plain") { Text = "Sternklar über dem Fluß.\n" },
        };
        message.From.Add(MailboxAddress.Parse("watch@nightwatch.example.org"));
        message.To.Add(MailboxAddress.Parse("Ilse <ilse@example.org>"));
        return new("key", LetterKind.Outlook, message, "", "", Given.Now);
    }
}
