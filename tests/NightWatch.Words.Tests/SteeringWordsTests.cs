using NodaTime;

namespace NightWatch.Words.Tests;

public sealed class SteeringWordsTests
{
    private static readonly English Language = English.Instance;

    private static readonly Speech Here = Speech.Metric(DateTimeZoneProviders.Tzdb["Europe/Madrid"]);

    private static readonly LocalDate Evening = new(2027, 6, 4);

    [Fact]
    public void A_wish_about_a_night_names_it_by_date_place_and_clock()
    {
        Assert.Equal(
            "Letters about the night of Fri 4 Jun 2027 at Salt pan come again.",
            Language.LettersAbout(Evening, "Salt pan", come: true, Here));
        Assert.Equal(
            "No letters about the night of Fri 4 Jun 2027 at Salt pan, unless it stands in your calendar and turns off.",
            Language.LettersAbout(Evening, "Salt pan", come: false, Here));
        Assert.Equal(
            "Switched to the night of Fri 4 Jun 2027 at Salt pan: leave by 18:05 CEST.",
            Language.Switched(Evening, "Salt pan", Instant.FromUtc(2027, 6, 4, 16, 5), Here));
        Assert.Equal("The night of Fri 4 Jun 2027 at Salt pan", Language.NightAt(Evening, "Salt pan", Here));
        Assert.Equal("Watch pan-1 rests; it looks again on Fri 4 Jun 2027.", Language.WatchRests("pan-1", Evening, Here));
    }
}
