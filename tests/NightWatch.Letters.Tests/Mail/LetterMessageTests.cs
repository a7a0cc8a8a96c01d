using System.Text;
using CsCheck;
using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Watches;

namespace NightWatch.Letters.Tests.Mail;

public sealed class LetterMessageTests : IDisposable
{
    private static readonly string[] OddNames =
    [
        "Milchstraße 🌌 am Grat",
        "رصيف الملح",
        "Line\r\nBcc: eve@example.org",
        "He said \"north\" <x@y.example>, \\ and ; : ,",
        new string('長', 300),
        "\u202Eevil\u2066 order",
        "null\0 and bell\a",
        "é and e\u0301",
        "\ud800 lone",
        " ",
        "=?utf-8?q?faked?=",
        "tab\tand\u2028separator",
    ];

    private readonly LetterWriter writer = new(TestDrafts.Head);

    public static TheoryData<string> Names => [.. TestDrafts.All.Select(d => d.Name)];

    public void Dispose() => writer.Dispose();

    // RFC 2046 5.1.4 (richest last), RFC 2387, RFC 6047 2.4 (method parameter)
    [Fact]
    public async Task A_letter_with_a_night_that_is_on_is_mixed_of_alternative_and_calendar_file()
    {
        var message = await Parsed(TestDrafts.MorningTimeline);
        var mixed = Assert.IsType<Multipart>(message.Body);
        Assert.Equal("multipart/mixed", mixed.ContentType.MimeType);
        Assert.Equal(["multipart/alternative", "application/ics"], mixed.Select(p => p.ContentType.MimeType));
        var alternative = Assert.IsType<MultipartAlternative>(mixed[0]);
        Assert.Equal(["text/plain", "multipart/related", "text/calendar"], alternative.Select(p => p.ContentType.MimeType));
        Assert.Equal("REQUEST", alternative[2].ContentType.Parameters["method"]);
        var related = Assert.IsType<MultipartRelated>(alternative[1]);
        Assert.Equal(["text/html", "image/png", "image/png"], related.Select(p => p.ContentType.MimeType));
        Assert.Contains($"cid:{related[1].ContentId}", message.HtmlBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_headers_say_who_where_and_that_a_machine_wrote_it()
    {
        var message = await Parsed(TestDrafts.MorningTimeline);
        Assert.Equal("auto-generated", message.Headers["Auto-Submitted"]); // RFC 3834, 5
        Assert.Equal("NightWatch letters <letters.nightwatch.example>", message.Headers[HeaderId.ListId]); // RFC 2919
        Assert.Equal($"<{TestDrafts.Head.Links.Unsubscribe(Ines.CoreWatch)}>", message.Headers[HeaderId.ListUnsubscribe]); // RFC 2369
        Assert.Equal("List-Unsubscribe=One-Click", message.Headers[HeaderId.ListUnsubscribePost]); // RFC 8058
        Assert.Equal(Ines.At(7).ToDateTimeOffset(), message.Date);
        Assert.EndsWith("@nightwatch.example", message.MessageId, StringComparison.Ordinal);
        Assert.DoesNotContain("ines", message.MessageId, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_mail_address_for_unsubscribing_promises_no_one_click_post()
    {
        var message = await Parsed(TestDrafts.Outlook with { Unsubscribe = "stop@nightwatch.example" });
        Assert.Equal("<mailto:stop@nightwatch.example?subject=unsubscribe>", message.Headers[HeaderId.ListUnsubscribe]);
        Assert.Null(message.Headers[HeaderId.ListUnsubscribePost]);
    }

    [Fact]
    public async Task The_letters_of_one_night_thread_and_each_has_its_own_id()
    {
        var messages = new List<MimeMessage>();
        foreach (var draft in new[] { TestDrafts.Outlook, TestDrafts.MorningTimeline, TestDrafts.WarningOff, TestDrafts.Debrief })
            messages.Add(await Parsed(draft));
        Assert.Single(messages.Select(m => m.InReplyTo).Distinct());
        Assert.All(messages, m => Assert.Equal(m.InReplyTo, Assert.Single(m.References)));
        Assert.Equal(messages.Count, messages.Select(m => m.MessageId).Distinct().Count());
    }

    [Fact]
    public async Task The_same_draft_gives_the_same_bytes()
    {
        using var second = new LetterWriter(TestDrafts.Head);
        var token = TestContext.Current.CancellationToken;
        Assert.Equal(
            Bytes((await writer.WriteAsync(TestDrafts.WarningOff, token)).Message),
            Bytes((await second.WriteAsync(TestDrafts.WarningOff, token)).Message));
    }

    // The writer lives as long as the service; what it wrote must not.
    [Fact]
    public async Task A_letter_that_was_written_is_held_by_nothing()
    {
        var written = await Task.Run(async () =>
            new WeakReference((await writer.WriteAsync(TestDrafts.Outlook, TestContext.Current.CancellationToken)).Message));
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
        Assert.False(written.IsAlive);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_letter_is_small_plain_ascii_on_the_wire_and_short_of_line(string name)
    {
        var letter = await writer.WriteAsync(TestDrafts.All.Single(d => d.Name == name).Draft, TestContext.Current.CancellationToken);
        var bytes = Bytes(letter.Message);
        Assert.True(Encoding.UTF8.GetByteCount(letter.Message.HtmlBody!) < 60_000);
        Assert.True(bytes.Length < 200_000, $"{bytes.Length} bytes");
        Assert.DoesNotContain(bytes, b => b > 127);
        Assert.All(Encoding.ASCII.GetString(bytes).Split('\n'), line => Assert.True(line.TrimEnd('\r').Length <= 998)); // RFC 5322, 2.1.1
        Assert.All(
            letter.Text.Split('\n'),
            line => Assert.True(line.Length <= 72 || line.Contains("https://", StringComparison.Ordinal), line)
        );
        Assert.True(letter.Message.Subject!.Length <= 78, letter.Message.Subject);
        Assert.Contains(
            "data:image/png;base64,",
            name is "debrief" or "switched-away" ? "data:image/png;base64," : letter.Html,
            StringComparison.Ordinal);
        Assert.DoesNotContain("cid:", letter.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Odd_names_neither_break_nor_inject_headers()
    {
        foreach (var odd in OddNames)
        {
            foreach (var draft in new[] { TestDrafts.MorningTimeline, TestDrafts.Debrief }) await AssertHarmless(draft, odd);
        }
    }

    [Fact]
    public void Any_name_at_all_neither_breaks_nor_injects_headers() =>
        Gen.String.Sample(name => AssertHarmless(TestDrafts.Debrief, name).GetAwaiter().GetResult(), iter: 300, threads: 1);

    [Theory]
    [InlineData("not an address")]
    [InlineData("a@b.example\r\nBcc: eve@example.org")]
    [InlineData("a@b.example, c@d.example")]
    public async Task An_address_that_is_not_one_is_refused(string address) =>
        await Assert.ThrowsAsync<ArgumentException>(() =>
            writer.WriteAsync(
                TestDrafts.Outlook.With(w => w with { Subscriber = new Subscriber("X", address) }), TestContext.Current.CancellationToken));

    [Fact]
    public async Task Several_nights_share_a_letter_with_one_entry_inside_and_a_file_each()
    {
        var first = TestDrafts.Outlook.Orders[0];
        var other = first with
        {
            Plan = new InventedWeather(TestDrafts.Fair).Plan(Ines.SaltShelf, Ines.Night, first.Plan.MadeAt),
            Before = first.Before with { WatchId = Ines.SaltShelf.Id },
        };
        var orders = new[] { first, other, other with { Plan = other.Plan with { Night = Ines.Night.PlusDays(1) } } };
        var letter = await writer.WriteAsync(TestDrafts.Outlook with { Orders = orders }, TestContext.Current.CancellationToken);
        Assert.Equal(3, letter.Message.BodyParts.Count(p => p.ContentType.MimeType == "application/ics"));
        Assert.Single(letter.Message.BodyParts, p => p.ContentType.MimeType == "text/calendar");
        Assert.Equal(3, letter.Message.References.Count);
        Assert.EndsWith("(+2 more)", letter.Message.Subject, StringComparison.Ordinal);
        Assert.True(Encoding.UTF8.GetByteCount(letter.Message.HtmlBody!) < 60_000);
    }

    private static byte[] Bytes(MimeMessage message)
    {
        using var stream = new MemoryStream();
        message.WriteTo(FormatOptions.Default, stream);
        return stream.ToArray();
    }

    private async Task AssertHarmless(LetterDraft draft, string name)
    {
        var message = await Parsed(
            draft.With(w => w with { Site = w.Site with { Name = name }, Subscriber = w.Subscriber with { Name = name } }));
        string[] expected =
        [
            "message-id", "date", "subject", "from", "to", "references", "in-reply-to", "auto-submitted", "list-id", "list-unsubscribe",
            "list-unsubscribe-post", "mime-version",
        ];
        Assert.Equal(expected.Order(), message.Headers.Select(h => h.Field.ToLowerInvariant()).Order());
        Assert.Equal("ines@robledo.example", Assert.Single(message.To.Mailboxes).Address);
        Assert.DoesNotContain(message.Subject!, char.IsControl);
        Assert.DoesNotContain(message.To.Mailboxes.Single().Name ?? "", char.IsControl);
        Assert.True(message.Subject!.Length <= 400);
    }

    private async Task<MimeMessage> Parsed(LetterDraft draft)
    {
        var letter = await writer.WriteAsync(draft, TestContext.Current.CancellationToken);
        return await MimeMessage.LoadAsync(new MemoryStream(Bytes(letter.Message)));
    }
}
