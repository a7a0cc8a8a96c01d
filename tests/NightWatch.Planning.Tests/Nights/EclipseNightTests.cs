using NightWatch.Planning.Grid;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Tests.Nights;

/// <summary>
/// The total eclipse of 2026-03-03 in the middle of a New Zealand night, dark from 11:04:26 to 12:02:45 UT (Five Millennium Canon of Lunar
/// Eclipses, Espenak and Meeus, NASA/TP-2009-214172, as quoted on public pages), and the next night under nearly the same Moon without one.
/// </summary>
public sealed class EclipseNightTests
{
    // High in the south in March, where the core has not risen yet.
    private static readonly Subject Carina = new Subject.FixedPoint("Carina", 161, -60);

    private static readonly Interval Totality = new(Instant.FromUtc(2026, 3, 3, 11, 4, 26), Instant.FromUtc(2026, 3, 3, 12, 2, 45));

    private static readonly RealNight Night = new(-44, 170.5, "Pacific/Auckland", new LocalDate(2026, 3, 3))
    {
        Subject = Carina,
        UsableRunMin = 50,
    };

    [Fact]
    public void Totality_gives_the_dark_sky_of_the_site()
    {
        var plan = Night.Plan();
        var moonless = (Night with { Date = new LocalDate(2026, 3, 19) }).Plan(); // new Moon

        // Totality and what stands next to it, where a sliver of the Moon is lit from the depth of the penumbra.
        var darkest = moonless.Conditions.Max(step => step.SkyMag);
        var dark = plan.Conditions.Where(step => step.SkyMag > darkest - 0.1).ToList();
        Assert.InRange(dark.Count * NightGrid.Step.TotalMinutes, 58, 90);
        Assert.All(plan.Conditions.Where(step => Totality.Contains(step.At)), step => Assert.Contains(step, dark));
        Assert.Equal(darkest!.Value, plan.Conditions.Where(step => Totality.Contains(step.At)).Max(step => step.SkyMag)!.Value, 0.05);
    }

    [Fact]
    public void The_night_is_no_longer_lost_to_the_Moon()
    {
        var verdict = Night.Plan().Verdict;
        var moon = Assert.Single(verdict.Reasons.OfType<MoonLight>());

        Assert.NotEqual(VerdictClass.NoGo, verdict.Class);
        Assert.True(moon.IsEclipsed);
        Assert.True(verdict.Run!.Value.Contains(Totality.Start) && verdict.Run.Value.Contains(Totality.End - Duration.FromSeconds(1)));
        Assert.InRange(verdict.UsableMin!.Value, 58, 207); // totality whole, and some of the umbral eclipse from 09:50:00 to 13:17:10
    }

    [Fact]
    public void The_next_night_is()
    {
        var verdict = (Night with { Date = new LocalDate(2026, 3, 4) }).Plan().Verdict;

        Assert.Equal((VerdictClass.NoGo, Factor.Moon), (verdict.Class, verdict.Deciding.Factor));
        Assert.False(Assert.IsType<MoonLight>(verdict.Deciding).IsEclipsed);
    }

    /// <summary>Stars count in full from 19.0 mag/arcsec² on; a full Moon leaves 18.3.</summary>
    [Fact]
    public void Stars_gain_by_it()
    {
        var eclipsed = (Night with { Subject = new Subject.Stars() }).Plan();
        var not = (Night with { Subject = new Subject.Stars(), Date = new LocalDate(2026, 3, 4) }).Plan();

        Assert.True(LostToTheMoon(eclipsed) < LostToTheMoon(not));
        Assert.True(eclipsed.Verdict.UsableMin > not.Verdict.UsableMin);
    }

    /// <summary>The core rises there at 12:40 UT with most of the light back.</summary>
    [Fact]
    public void A_subject_that_rises_after_it_is_lost_to_the_Moon_as_ever()
    {
        var verdict = (Night with { Subject = new Subject.GalacticCore() }).Plan().Verdict;

        Assert.Equal((VerdictClass.NoGo, Factor.Moon), (verdict.Class, verdict.Deciding.Factor));
    }

    private static double LostToTheMoon(NightPlan plan) => plan.Verdict.Reasons.OfType<MoonLight>().Single().LostShare!.Value;
}
