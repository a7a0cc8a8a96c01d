using System.Net;
using System.Text.RegularExpressions;
using NightWatch.Letters.Tests.Plans;

namespace NightWatch.Letters.Tests.Layout;

/// <summary>Plain text and HTML say the same.</summary>
public sealed partial class TwoLayoutsTests
{
    public static TheoryData<string> Names => [.. TestDrafts.All.Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Both_layouts_carry_the_same_figures_and_times(string name)
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        var letter = await writer.WriteAsync(TestDrafts.All.Single(d => d.Name == name).Draft, TestContext.Current.CancellationToken);
        Assert.Equal(Figures(ListNumber().Replace(letter.Text, "")), Figures(Shown(letter.Message.HtmlBody!)));
    }

    [Fact]
    public async Task Without_pictures_a_letter_still_says_what_they_show()
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        var letter = await writer.WriteAsync(TestDrafts.MorningTimeline, TestContext.Current.CancellationToken);
        var alt = WebUtility.HtmlDecode(Regex.Match(letter.Message.HtmlBody!, "alt=\"([^\"]*)\"").Groups[1].Value);
        Assert.Contains("Shooting window Sat 5 Jun 00:07 to 04:33 CEST", alt.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains("Cloud: Broken cloud: 23 %", alt.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Imperial_subscribers_read_no_metric_weather()
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        foreach (var (_, draft) in TestDrafts.All)
        {
            var letter = await writer.WriteAsync(
                draft.With(w => w with { Letters = w.Letters with { Units = NightWatch.Planning.Watches.UnitSystem.Imperial } }),
                TestContext.Current.CancellationToken);
            Assert.DoesNotMatch(MetricWeather(), Flat(letter.Text));
            Assert.DoesNotMatch(MetricWeather(), Flat(Shown(letter.Message.HtmlBody!)));
        }
    }

    [Fact]
    public async Task Markup_in_a_name_is_shown_and_not_obeyed()
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        var draft = TestDrafts.MorningTimeline.With(w =>
            w with
            {
                Site = w.Site with { Name = "<script>alert(1)</script> & <b>Ridge</b>" },
            });
        var letter = await writer.WriteAsync(draft, TestContext.Current.CancellationToken);
        Assert.DoesNotContain("<script", letter.Message.HtmlBody, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<b>", letter.Message.HtmlBody, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("<script>alert(1)</script> & <b>Ridge</b>", Shown(letter.Message.HtmlBody!), StringComparison.Ordinal);
    }

    private static string Shown(string html)
    {
        var links = Regex.Replace(html, "<a [^>]*href=\"([^\"]*)\"[^>]*>", " $1 ");
        var body = Regex.Replace(
            links[links.IndexOf("<body", StringComparison.Ordinal)..], "<div class=\"preview\".*?</div>", "", RegexOptions.Singleline);
        return WebUtility.HtmlDecode(Tag().Replace(body, " ")).Replace('\u00a0', ' ');
    }

    private static SortedSet<string> Figures(string text) => [.. Figure().Matches(text).Select(m => m.Value.TrimEnd('.', ':'))];

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The definition of fog is quoted as the WMO published it.</summary>
    [GeneratedRegex(@"(?<!WMO: visibility below )\b\d+(\.\d+)? (°C|m/s|km)\b")]
    private static partial Regex MetricWeather();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\d[\d.:]*")]
    private static partial Regex Figure();

    [GeneratedRegex(@"(?m)^\d\. ")]
    private static partial Regex ListNumber();
}
