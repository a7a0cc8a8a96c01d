using NodaTime;

namespace NightWatch.Words.Tests;

// Zone rules and abbreviations: IANA time zone database.
public sealed class ClockWordsTests
{
    [Theory]
    [InlineData("Europe/Madrid", "2027-06-05T00:10:00Z", "Sat 5 Jun 02:10 CEST")]
    [InlineData("Europe/Berlin", "2026-03-14T01:10:00Z", "Sat 14 Mar 02:10 CET")]
    [InlineData("America/Sao_Paulo", "2027-06-05T00:10:00Z", "Fri 4 Jun 21:10 UTC−3")]
    [InlineData("Asia/Kathmandu", "2027-06-05T00:10:00Z", "Sat 5 Jun 05:55 UTC+5:45")]
    [InlineData("Etc/UTC", "2027-06-05T00:10:29Z", "Sat 5 Jun 00:10 UTC")]
    [InlineData("Etc/UTC", "2027-06-05T23:59:30Z", "Sun 6 Jun 00:00 UTC")]
    public void An_instant_carries_its_local_date_and_zone(string zone, string utc, string words) =>
        Assert.Equal(words, Speech.Metric(DateTimeZoneProviders.Tzdb[zone]).Clock.Full(At(utc)));

    [Theory]
    [InlineData("2027-06-04T21:30:00Z", "2027-06-05T02:20:00Z", "Fri 4 Jun 23:30 to Sat 5 Jun 04:20 CEST")]
    [InlineData("2027-06-04T22:05:00Z", "2027-06-05T02:20:00Z", "Sat 5 Jun 00:05 to 04:20 CEST")]
    [InlineData("2027-03-27T22:30:00Z", "2027-03-28T02:20:00Z", "Sat 27 Mar 23:30 CET to Sun 28 Mar 04:20 CEST")]
    [InlineData("2027-10-31T00:10:00Z", "2027-10-31T01:50:00Z", "Sun 31 Oct 02:10 CEST to 02:50 CET")]
    public void A_span_spells_out_the_dates_and_a_clock_change(string start, string end, string words) =>
        Assert.Equal(words, Speech.Metric(DateTimeZoneProviders.Tzdb["Europe/Madrid"]).Clock.Span(new Interval(At(start), At(end))));

    [Theory]
    [InlineData(2027, 6, 4, "Fri 4–Sat 5 Jun")]
    [InlineData(2027, 5, 31, "Mon 31 May–Tue 1 Jun")]
    [InlineData(2027, 12, 31, "Fri 31 Dec–Sat 1 Jan")]
    public void A_night_has_two_dates(int year, int month, int day, string words) =>
        Assert.Equal(words, Speech.Metric(DateTimeZone.Utc).Clock.Night(new LocalDate(year, month, day)));

    private static Instant At(string utc) => NodaTime.Text.InstantPattern.ExtendedIso.Parse(utc).Value;
}
