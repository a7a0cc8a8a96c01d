using System.Text;
using MimeKit;
using NightWatch.Letters.Notices;
using NightWatch.Letters.Tests.Plans;
using NodaTime;

namespace NightWatch.Letters.Tests.Notices;

public sealed class NoticeTests
{
    public static TheoryData<string> Names => [.. TestNotices.All.Select(notice => notice.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_notice_is_one_message_of_text_and_HTML_within_the_letters_bounds(string name)
    {
        var notice = await WriteAsync(name);
        Assert.True(notice.Message.Subject!.Length <= 78); // RFC 5322, 2.1.1
        Assert.Equal("auto-generated", notice.Message.Headers["Auto-Submitted"]); // RFC 3834
        Assert.All(
            notice.Text.Split('\n'),
            line =>
                Assert.True(
                    line.Length <= 72
                        || line.StartsWith("http", StringComparison.Ordinal)
                        || line.StartsWith("  http", StringComparison.Ordinal),
                    line));
        Assert.True(Encoding.UTF8.GetByteCount(notice.Html) < 60_000);
        Assert.Equal("text/plain text/html", string.Join(' ', notice.Message.BodyParts.Select(part => part.ContentType.MimeType)));
        Assert.Equal(Bytes(notice.Message), Bytes((await WriteAsync(name)).Message));
    }

    [Fact]
    public async Task A_confirmation_carries_no_word_of_whoever_typed_the_address()
    {
        var notice = await WriteAsync("confirmation");
        Assert.Equal("", Assert.Single(notice.Message.To.Mailboxes).Name);
        Assert.DoesNotContain("threshing", notice.Text + notice.Html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("40.40° N, 0.93° W", notice.Text.Replace('\n', ' '), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("confirmation", false)]
    [InlineData("sign-in", false)]
    [InlineData("digest", true)]
    public async Task Only_what_comes_again_offers_to_be_stopped(string name, bool offers)
    {
        var headers = (await WriteAsync(name)).Message.Headers;
        // RFC 8058.
        Assert.Equal(offers, headers.Contains("List-Unsubscribe") && headers["List-Unsubscribe-Post"] == "List-Unsubscribe=One-Click");
        Assert.Equal(offers, headers.Contains("List-Id")); // RFC 2919
    }

    [Fact]
    public async Task The_digest_shows_the_free_and_best_nights_first_and_no_night_that_is_off()
    {
        var text = (await WriteAsync("digest")).Text;
        var verdicts = text.Split('\n')
            .Where(line => line.StartsWith("GO:", StringComparison.Ordinal) || line.StartsWith("MARGINAL:", StringComparison.Ordinal))
            .ToArray();
        Assert.Equal(6, verdicts.Length);
        Assert.Equal(["GO: Fri 4–Sat 5 Jun, The threshing floor", "GO: Fri 4–Sat 5 Jun, Salt shelf"], verdicts[..2]);
        Assert.Contains(
            "not one of your free evenings", text.Split("Tue 8–Wed 9 Jun")[1].ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.DoesNotContain("NO-GO", text, StringComparison.Ordinal);
        Assert.Contains("Next dark nights", text, StringComparison.Ordinal);
    }

    /// <summary>Both places' GO night is to be left for between 18:49 and 18:50.</summary>
    [Fact]
    public async Task The_digest_offers_no_night_that_was_to_be_left_for_already()
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        async Task<bool> OffersAsync(Instant now) =>
            (await writer.WriteDigestAsync(TestNotices.Digest with { Now = now }, TestContext.Current.CancellationToken)).Text.Contains(
                "GO: Fri 4–Sat 5 Jun", StringComparison.Ordinal);

        Assert.True(await OffersAsync(Ines.At(18, 48)));
        Assert.False(await OffersAsync(Ines.At(18, 50)));
    }

    [Fact]
    public async Task A_week_without_a_night_is_told_as_that()
    {
        var notice = await WriteAsync("digest-empty");
        Assert.Contains("no night is on", notice.Message.Subject, StringComparison.Ordinal);
        Assert.True(TestNotices.EmptyDigest.SaysSomething);
        var nothing = TestNotices.EmptyDigest with
        {
            Plans = [.. TestNotices.EmptyDigest.Plans.Select(plan => plan with { Verdict = plan.Verdict with { Run = null } })],
            Seasons = new Dictionary<string, NightWatch.Sky.Season.DarkCalendar>(),
        };
        Assert.False(nothing.SaysSomething);
    }

    [Fact]
    public async Task Two_digests_of_one_week_are_one_in_the_outbox()
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        async Task<string> KeyAsync(int days) =>
            (
                await writer.WriteDigestAsync(
                    TestNotices.Digest with
                    {
                        Now = TestNotices.Digest.Now + Duration.FromDays(days),
                    },
                    TestContext.Current.CancellationToken)).DedupeKey;
        // 3 June 2027 is a Thursday; ISO 8601 weeks begin on Monday.
        Assert.Equal(await KeyAsync(0), await KeyAsync(3));
        Assert.NotEqual(await KeyAsync(0), await KeyAsync(4));
    }

    private static async Task<Notice> WriteAsync(string name)
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        return await TestNotices.All.Single(notice => notice.Name == name).Write(writer);
    }

    private static byte[] Bytes(MimeMessage message)
    {
        using var bytes = new MemoryStream();
        message.WriteTo(bytes);
        return bytes.ToArray();
    }
}
