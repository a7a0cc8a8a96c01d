using NodaTime;

namespace NightWatch.Words.Tests;

public sealed class DateWordsTests
{
    private static readonly Speech Plain = Speech.ToAnybody;

    [Theory]
    [InlineData(2026, 6, 3, 2026, 6, 9, "3–9 Jun 2026")]
    [InlineData(2026, 5, 28, 2026, 6, 3, "28 May–3 Jun 2026")]
    [InlineData(2026, 12, 28, 2027, 1, 3, "28 Dec 2026–3 Jan 2027")]
    [InlineData(2026, 6, 3, 2026, 6, 3, "3 Jun 2026")]
    [InlineData(2026, 6, 3, 2027, 6, 3, "3 Jun 2026–3 Jun 2027")]
    public void Dates_are_as_short_as_they_can_be_understood(int y1, int m1, int d1, int y2, int m2, int d2, string words) =>
        Assert.Equal(words, Plain.Language.Dates(new(y1, m1, d1), new(y2, m2, d2)));

    [Theory]
    [InlineData(45, "45 min", "0 h 45 min")]
    [InlineData(60, "1 h", "1 h 00 min")]
    [InlineData(185, "3 h 5 min", "3 h 05 min")]
    public void A_length_is_short_in_a_sentence_and_even_in_a_column(int minutes, string sentence, string column)
    {
        Assert.Equal(sentence, Plain.Clock.Length(Duration.FromMinutes(minutes)));
        Assert.Equal(column, Plain.Clock.TableLength(Duration.FromMinutes(minutes)));
    }

    [Theory]
    [InlineData(0, "0 s ago")]
    [InlineData(90, "90 s ago")]
    [InlineData(160, "3 min ago")]
    [InlineData(7199, "2 h 00 min ago")]
    [InlineData(11_100, "3 h 05 min ago")]
    [InlineData(172_800, "2 days ago")]
    public void An_age_is_told_in_a_unit_that_tells_something(int seconds, string words) =>
        Assert.Equal(words, Plain.Language.Ago(Duration.FromSeconds(seconds)));

    [Fact]
    public void Tables_and_letters_say_one_clock()
    {
        var clock = Speech.Metric(DateTimeZoneProviders.Tzdb["America/Santiago"]).Clock;
        var span = new Interval(Instant.FromUtc(2026, 8, 12, 22, 10, 40), Instant.FromUtc(2026, 8, 13, 4, 45));

        Assert.Equal("18:11", clock.Time(span.Start));
        Assert.Equal("18:11 UTC−4", clock.ZonedTime(span.Start));
        Assert.Equal("18:11 to 00:45", clock.Times(span));
        Assert.Equal("18:11 to 00:45 UTC−4", clock.ZonedTimes(span));
        Assert.Equal("Wed 12 Aug 18:11 UTC−4 to Thu 13 Aug 00:45 UTC−4", clock.FullSpan(span));
        Assert.Equal("Wed 12 Aug 2026", clock.Date(new LocalDate(2026, 8, 12)));
        Assert.Equal("August 2026", clock.FullMonth(new YearMonth(2026, 8)));
    }
}
