using System.Net;
using System.Text.RegularExpressions;
using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Letters.Tests.Layout;

/// <summary>The first letter after an upgrade says in two lines what is new, and no other does.</summary>
public sealed class NewsTests
{
    private static readonly LetterHead Head = new(
        new MailboxAddress("NightWatch", "watch@nightwatch.example"), "nightwatch.example", new Uri("https://nightwatch.example/"))
    {
        Signer = new LinkSigner("a key"u8.ToArray()),
    };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<LetterKind> Kinds => [.. Enum.GetValues<LetterKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Every_kind_of_letter_can_say_it_at_its_end_in_both_layouts(LetterKind kind)
    {
        using var writer = new LetterWriter(Head);
        var draft = Draft(kind, Ines.CoreWatch);

        var told = await writer.WriteAsync(draft with { TellsNews = true }, Cancel);
        var silent = await writer.WriteAsync(draft, Cancel);

        SaysIt(Flat(told.Text));
        SaysIt(Shown(told.Html));
        Assert.DoesNotContain("New in these letters", silent.Text + silent.Html, StringComparison.Ordinal);
        // Nothing but what stands at the end of every letter comes after it.
        var (before, news) = (
            told.Text.IndexOf("New in these letters", StringComparison.Ordinal),
            silent.Text.IndexOf("Before any night out", StringComparison.Ordinal));
        Assert.Equal(silent.Text[..news], told.Text[..before]);
        Assert.Equal(silent.DedupeKey, told.DedupeKey);
    }

    [Fact]
    public async Task The_digest_can_say_it_too()
    {
        using var writer = new LetterWriter(Head);

        var told = await writer.WriteDigestAsync(TestNotices.Digest with { TellsNews = true }, Cancel);
        var silent = await writer.WriteDigestAsync(TestNotices.Digest, Cancel);

        SaysIt(Flat(told.Text));
        SaysIt(Shown(told.Html));
        Assert.DoesNotContain("New in these letters", silent.Text + silent.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_there_are_no_pages_the_setting_is_named()
    {
        using var writer = new LetterWriter(Head with { PagesBase = null });

        var letter = await writer.WriteAsync(Draft(LetterKind.Outlook, Ines.CoreWatch) with { TellsNews = true }, Cancel);

        Assert.Contains(
            "2 wasted drives, until you set it otherwise (outing.drivesPerLostNight in the watch file).",
            Flat(letter.Text),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "one wasted drive, until")]
    [InlineData(2.5, "2.5 wasted drives, until")]
    public async Task What_a_missed_night_is_worth_is_the_watch_s_own_figure(double drives, string says)
    {
        using var writer = new LetterWriter(Head);
        var watch = Ines.CoreWatch with { Outing = Ines.CoreWatch.Outing with { DrivesPerLostNight = drives } };

        Assert.Contains(
            says,
            Flat((await writer.WriteAsync(Draft(LetterKind.Outlook, watch) with { TellsNews = true }, Cancel)).Text),
            StringComparison.Ordinal);
    }

    private static LetterDraft Draft(LetterKind kind, Watch watch)
    {
        var now = Ines.At(12);
        var plan = new InventedWeather(TestDrafts.Fair).Plan(watch, Ines.Night, now);
        var order = new LetterOrder(
            kind, plan, new ToldNight { WatchId = watch.Id, Night = Ines.Night }, now + Duration.FromHours(5), "a test");
        return new LetterDraft { Orders = [order], Now = now };
    }

    private static void SaysIt(string text)
    {
        Assert.Contains(
            "A night is now told by its chance of enough good frames and by what a good night missed is worth to you: 2 wasted drives",
            text,
            StringComparison.Ordinal);
        Assert.Contains("What must be done first stands in the first line.", text, StringComparison.Ordinal);
        Assert.Contains($"https://nightwatch.example/watches/{Ines.CoreWatch.Id}/edit", text, StringComparison.Ordinal);
        Assert.Contains(
            "The old limit on moonlight is gone: what counts is how dark the sky is at your subject", text, StringComparison.Ordinal);
    }

    private static string Shown(string html) =>
        Flat(WebUtility.HtmlDecode(Regex.Replace(Regex.Replace(html, "<a [^>]*href=\"([^\"]*)\"[^>]*>", " $1 "), "<[^>]*>", " ")));

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
