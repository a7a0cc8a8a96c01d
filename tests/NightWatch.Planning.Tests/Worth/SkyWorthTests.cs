using CsCheck;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Worth;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Tests.Worth;

public sealed class SkyWorthTests
{
    private static readonly DarkLevels Core = DarkLevels.Of(new Limits(), new Subject.GalacticCore());

    /// <summary>The levels of the design; common practice, no source.</summary>
    [Theory]
    [InlineData(21.5, 1)]
    [InlineData(20.8, 1)]
    [InlineData(20.15, 0.5)]
    [InlineData(19.5, 0)]
    [InlineData(16.7, 0)] // the middle of a city
    public void A_frame_counts_by_the_sky_at_the_subject(double mag, double share) => Assert.Equal(share, SkyWorth.Of(Core, mag), 9);

    [Fact]
    public void Stars_bear_a_brighter_sky() =>
        Assert.Equal(
            (1.0, 0.0),
            (
                SkyWorth.Of(DarkLevels.Of(new Limits(), new Subject.Stars()), 19),
                SkyWorth.Of(DarkLevels.Of(new Limits(), new Subject.Stars()), 17)));

    [Fact]
    public void A_watchs_own_levels_come_first() =>
        Assert.Equal(new DarkLevels(21.2, 19.5), DarkLevels.Of(new Limits { DarkFullMag = 21.2 }, new Subject.GalacticCore()));

    [Fact]
    public void More_Moon_town_or_twilight_never_makes_it_darker() =>
        Gen.Select(Gen.Double[0, 5000], Gen.Double[0, 5000], Gen.Double[0, 2000]).Sample((moon, twilight, more) =>
            Step(moon + more, twilight).Light.Mag <= Step(moon, twilight).Light.Mag
            && SkyWorth.MoonlessMag(Step(moon, twilight + more)) <= SkyWorth.MoonlessMag(Step(moon, twilight))
            && SkyWorth.MoonlessMag(Step(moon, twilight)) >= Step(moon, twilight).Light.Mag - 1e-9);

    private static SkyStep Step(double moonNl, double twilightNl) =>
        new(
            -20,
            new MoonSighting(new Horizontal(20, 90), 384_400, 0.26, 90, 0.5),
            new Horizontal(40, 180),
            new SkyLight(60, moonNl, twilightNl));
}
