using CsCheck;
using NightWatch.Sky.Moon;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Moon;

public class MoonPhasesTests
{
    // Computed with ERFA 2.0 (precession, nutation, Earth) and the ELP/MPP02 tables by a program of its own, for all of 2026, UTC.
    private const string Phases2026 =
        """
        Full 01-03 10:02:54; LastQuarter 01-10 15:48:24; New 01-18 19:51:59; FirstQuarter 01-26 04:47:23
        Full 02-01 22:09:15; LastQuarter 02-09 12:43:06; New 02-17 12:01:09; FirstQuarter 02-24 12:27:37
        Full 03-03 11:37:54; LastQuarter 03-11 09:38:31; New 03-19 01:23:29; FirstQuarter 03-25 19:17:43
        Full 04-02 02:11:58; LastQuarter 04-10 04:51:39; New 04-17 11:51:48; FirstQuarter 04-24 02:31:45
        Full 05-01 17:23:11; LastQuarter 05-09 21:10:28; New 05-16 20:01:03; FirstQuarter 05-23 11:10:57
        Full 05-31 08:45:12; LastQuarter 06-08 10:00:31; New 06-15 02:54:10; FirstQuarter 06-21 21:55:24
        Full 06-29 23:56:41; LastQuarter 07-07 19:28:59; New 07-14 09:43:37; FirstQuarter 07-21 11:05:36
        Full 07-29 14:35:43; LastQuarter 08-06 02:21:29; New 08-12 17:36:45; FirstQuarter 08-20 02:46:21
        Full 08-28 04:18:32; LastQuarter 09-04 07:51:14; New 09-11 03:27:00; FirstQuarter 09-18 20:43:47
        Full 09-26 16:49:02; LastQuarter 10-03 13:25:04; New 10-10 15:50:05; FirstQuarter 10-18 16:12:41
        Full 10-26 04:11:49; LastQuarter 11-01 20:28:27; New 11-09 07:02:07; FirstQuarter 11-17 11:47:50
        Full 11-24 14:53:34; LastQuarter 12-01 06:08:40; New 12-09 00:51:51; FirstQuarter 12-17 05:42:40
        Full 12-24 01:28:14; LastQuarter 12-30 18:59:30
        """;

    [Fact]
    public void All_phases_of_2026_agree_with_an_independent_computation_within_two_seconds()
    {
        var expected = Phases2026.Split([';', '\n'], StringSplitOptions.TrimEntries).Select(row => row.Split(' ')).ToList();
        var found = MoonPhases.Between(Instant.FromUtc(2026, 1, 1, 0, 0), Instant.FromUtc(2027, 1, 1, 0, 0));
        Assert.Equal(expected.Select(row => row[0]), found.Select(phase => phase.Name.ToString()));
        foreach (var (row, phase) in expected.Zip(found))
        {
            var at = InstantPattern.General.Parse($"2026-{row[1]}T{row[2]}Z").Value;
            Assert.InRange((phase.At - at).TotalSeconds, -2, 2);
        }
    }

    // US Naval Observatory, "Phases of the Moon", to the minute, as quoted in the test-suite of the astronomy library Skyfield.
    [Theory]
    [InlineData(PhaseName.FirstQuarter, "2018-09-16T23:15:00Z")]
    [InlineData(PhaseName.Full, "2018-09-25T02:52:00Z")]
    public void Phases_agree_with_the_naval_observatory_to_the_minute(PhaseName name, string at)
    {
        var expected = InstantPattern.General.Parse(at).Value;
        var phase = MoonPhases.Next(name, expected - Duration.FromDays(7));
        Assert.InRange((phase.At - expected).TotalSeconds, -31, 31);
    }

    // Meeus, Astronomical Algorithms, 2nd ed., examples 49.a and 49.b, in TD; his short series errs by up to 17 s. TT - UTC: 48.18 s in
    // 1977 (the table of leap seconds), 69.18 s for 2044.
    [Theory]
    [InlineData(PhaseName.New, "1977-02-18T03:37:42Z", 48.184)]
    [InlineData(PhaseName.LastQuarter, "2044-01-21T23:48:17Z", 69.184)]
    public void Phases_agree_with_the_examples_of_Meeus(PhaseName name, string dynamicalTime, double ttMinusUtc)
    {
        var expected = InstantPattern.General.Parse(dynamicalTime).Value - Duration.FromSeconds(ttMinusUtc);
        var phase = MoonPhases.Next(name, expected - Duration.FromDays(3));
        Assert.InRange((phase.At - expected).TotalSeconds, -17, 17);
    }

    [Theory]
    [InlineData(1900)]
    [InlineData(1968)]
    [InlineData(2089)]
    public void Phases_follow_each_other_without_a_gap_for_years(int year)
    {
        var phases = MoonPhases.Between(Instant.FromUtc(year, 1, 2, 0, 0), Instant.FromUtc(year + 4, 1, 2, 0, 0));
        foreach (var (earlier, later) in phases.Zip(phases.Skip(1)))
        {
            Assert.Equal(((int)earlier.Name + 1) % 4, (int)later.Name);
            Assert.InRange((later.At - earlier.At).TotalDays, 6.5, 8.3);
        }

        // 1460 or 1461 days hold 197.8 or 197.9 quarters.
        Assert.InRange(phases.Count, 197, 199);
    }

    [Fact]
    public void Next_and_previous_enclose_any_instant() =>
        Gen.Select(Gen.Long[-1_500_000_000, 4_000_000_000], Gen.Enum<PhaseName>()).Sample(
            (seconds, name) =>
            {
                var at = Instant.FromUnixTimeSeconds(seconds);
                var next = MoonPhases.Next(name, at);
                var previous = MoonPhases.Previous(name, at);
                Assert.True(previous.At < at && next.At >= at);
                Assert.Equal(name, previous.Name);
                Assert.InRange((next.At - previous.At).TotalDays, 29.1, 29.95);
            },
            iter: 60);
}
