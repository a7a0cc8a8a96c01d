using CsCheck;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Words.Tests;

// Wording of our own; no outside source.
public sealed class LetterWordsTests
{
    private static readonly LocalDate Evening = new(2027, 6, 4);

    private static readonly Speech To = new(English.Instance, UnitSystem.Metric, DateTimeZoneProviders.Tzdb["Europe/Madrid"]);

    private static readonly Speech ToImperial = new(English.Instance, UnitSystem.Imperial, DateTimeZoneProviders.Tzdb["Europe/Madrid"]);

    [Theory]
    [InlineData(0, NightNaming.Counted, "Tonight is on.")]
    [InlineData(1, NightNaming.Dated, "Tomorrow night is on.")]
    [InlineData(3, NightNaming.Counted, "In 3 nights is on.")]
    [InlineData(3, NightNaming.Dated, "The night of Fri 4–Sat 5 Jun is on.")]
    [InlineData(-1, NightNaming.Counted, "The night of Fri 4–Sat 5 Jun is on.")]
    [InlineData(-1, NightNaming.UnderWay, "This night is on.")]
    public void A_night_is_named_as_its_reader_counts_it(int ahead, NightNaming naming, string headline) =>
        Assert.Equal(headline, To.Language.Headline(NightNews.On, new SpokenNight(Evening, ahead), naming, To));

    [Fact]
    public void Every_news_has_a_headline_of_its_own()
    {
        var night = new SpokenNight(Evening, 2);
        var said = Enum.GetValues<NightNews>().Select(news => To.Language.Headline(news, night, NightNaming.Counted, To)).ToArray();

        Assert.Distinct(said);
        Assert.All(said, sentence => Assert.Matches("^[A-Z].*[.?]$", sentence));
    }

    [Fact]
    public void A_subject_line_names_the_deciding_figure_and_the_choice_instead() => PlannedNights.All
        .Where(plan => plan.Verdict.Class == VerdictClass.NoGo && plan.Verdict.Deciding.Value is not null)
        .Sample(
            plan =>
            {
                var words = To.Language.SubjectLine(
                    new SubjectFacts
                    {
                        News = NightNews.Off,
                        Class = plan.Verdict.Class,
                        Night = new SpokenNight(Evening, 0),
                        Chance = plan.Verdict.Probability.Value,
                        Deciding = plan.Verdict.Deciding,
                        Instead = new SpokenChoice(Evening.PlusDays(1), null, null),
                    },
                    To);
                Assert.Equal("OFF tonight, Fri 4 Jun: ", words.Head);
                Assert.StartsWith($", {To.Within(plan.Verdict.Deciding.Factor)} ", words.Tails[0], StringComparison.Ordinal);
                Assert.Equal("; instead Sat 5 Jun", words.Tails[1]);
            },
            iter: 20,
            threads: 1);

    [Fact]
    public void A_choice_is_told_by_night_place_and_way_in_the_readers_units()
    {
        var from = new SpokenNight(Evening, 0);

        Assert.Equal("tonight at Salt shelf, 86 km away", To.Language.Of(new SpokenChoice(Evening, "Salt shelf", 86), from, To));
        Assert.Equal(
            "tonight at Salt shelf, 53 mi away", ToImperial.Language.Of(new SpokenChoice(Evening, "Salt shelf", 86), from, ToImperial));
        Assert.Equal("Sat 5 Jun here", To.Language.Of(new SpokenChoice(Evening.PlusDays(1), null, null), from, To));
    }
}
