using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Words.Tests;

/// <summary>Everything that has a name is called by words, each by its own; and what letters without a night say.</summary>
public sealed class NameWordsTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 6, 4, 9, 0);

    private static readonly Speech Metric = new(English.Instance, UnitSystem.Metric, DateTimeZone.Utc);

    private static readonly Speech Imperial = new(English.Instance, UnitSystem.Imperial, DateTimeZone.Utc);

    public static TheoryData<string[]> Named =>
    [
        new([.. Enum.GetValues<FactName>().Select(English.Instance.Of)]),
        new([.. Enum.GetValues<LetterPart>().Select(English.Instance.Of)]),
        new([.. Enum.GetValues<Quantity>().Select(English.Instance.Of)]),
        new([.. Enum.GetValues<PlanPart>().Select(English.Instance.Of)]),
        new([.. Enum.GetValues<NightOutcome>().Select(English.Instance.Of)]),
        new([.. Enum.GetValues<SpokenLetter>().Select(letter => English.Instance.ToldBy(letter, Now, Metric))]),
    ];

    [Theory]
    [MemberData(nameof(Named))]
    public void Every_name_is_words_of_its_own(string[] said)
    {
        Assert.Distinct(said);
        Assert.All(said, words => Assert.Matches("^[A-Z]", words));
        // A member's own name, where nobody thought of its words: "TestFrames".
        Assert.All(said, words => Assert.DoesNotMatch("^[A-Z][a-z]+[A-Z]", words));
    }

    [Theory]
    [InlineData(48.2085, 16.3721, "48.21° N, 16.37° E")]
    [InlineData(-33.9, -70.55, "33.90° S, 70.55° W")]
    public void A_confirmation_names_the_place_by_figures_alone(double latitudeDeg, double longitudeDeg, string place)
    {
        var words = English.Instance.Confirmation(new GeoPosition(latitudeDeg, longitudeDeg, 0), Now + Duration.FromHours(48), Now, Metric);

        Assert.Contains($"is coming at {place}, when that changes", words.Says[0], StringComparison.Ordinal);
        Assert.Contains("until Sun 6 Jun 09:00 UTC.", words.Then[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "Best dark run: Salt shelf, 1 night, 4.5 h")]
    [InlineData(3, "Best dark run: Salt shelf, 3 nights, 4.5 h")]
    public void Nights_of_a_run_are_counted(int nights, string title)
    {
        var first = new LocalDate(2027, 6, 4);

        Assert.Equal(
            title,
            English.Instance.BestRun("Salt shelf", new NightSpell(first, first.PlusDays(nights - 1), nights, Duration.FromHours(4.5))));
    }

    [Fact]
    public void A_figure_that_was_told_is_repeated_in_the_readers_units()
    {
        Assert.Equal(
            "told as 2.5 °C between lens and dew point (ok).",
            English.Instance.ToldFigure(Factor.Dew, 2.5, Unit.Kelvin, Severity.Ok, Metric));
        Assert.Equal(
            "told as 4.5 °F between lens and dew point (ok).",
            English.Instance.ToldFigure(Factor.Dew, 2.5, Unit.Kelvin, Severity.Ok, Imperial));
        Assert.Equal(
            "told as unknown in the mean (caution).",
            English.Instance.ToldFigure(Factor.Cloud, null, Unit.Fraction, Severity.Caution, Metric));
    }
}
