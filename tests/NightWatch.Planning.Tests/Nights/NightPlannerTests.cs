using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Places;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Planning.Tests.Nights;

/// <summary>The whole way over the real sky, on dates that everybody can check.</summary>
public sealed class NightPlannerTests
{
    /// <summary>
    /// Solar eclipse of 12 August 2026, 17:46 UT: the Moon is new. Lunar eclipse of 28 August 2026, 04:13 UT: it is full.
    /// </summary>
    [Fact]
    public void The_night_of_a_solar_eclipse_is_moonless_and_that_of_a_lunar_eclipse_is_lost_to_the_Moon()
    {
        var dark = Clear(new LocalDate(2026, 8, 12), DesertNight.Zone, -24.6, 15.9);
        var bright = Clear(new LocalDate(2026, 8, 27), DesertNight.Zone, -24.6, 15.9);

        Assert.Equal(VerdictClass.Go, dark.Verdict.Class);
        Assert.Equal(0, dark.Summary.MoonBrighteningMag);
        Assert.Equal((VerdictClass.NoGo, Factor.Moon), (bright.Verdict.Class, bright.Verdict.Deciding.Factor));
        Assert.True(bright.Summary.MoonIlluminatedFraction > 0.99);
    }

    /// <summary>
    /// Full Moon on 24 November 2026, 14:53 UT (almanac value from memory): three nights later it is bright and up, and the galactic core
    /// behind the Sun.
    /// </summary>
    [Fact]
    public void Of_a_Moon_that_is_up_while_the_subject_is_not_it_is_not_said_that_it_adds_no_light()
    {
        var plan = Clear(new LocalDate(2026, 11, 27), DesertNight.Zone, -24.6, 15.9);

        Assert.Null(plan.Verdict.Run);
        Assert.True(plan.Summary.MoonIlluminatedFraction > 0.7);
        Assert.Null(plan.Summary.MoonBrighteningMag);
        Assert.True(Assert.Single(plan.Summary.MoonTurns).Rises);
    }

    /// <summary>At the June solstice the Sun sinks to latitude + 23.44° − 90° below the horizon: −9.1° at 57.5° N.</summary>
    [Fact]
    public void Midsummer_in_Scotland_has_no_darkness_and_says_how_far_the_Sun_sinks()
    {
        var plan = Clear(new LocalDate(2026, 6, 21), DateTimeZoneProviders.Tzdb["Europe/London"], 57.5, -5.5);

        Assert.Equal((VerdictClass.NoGo, Factor.Twilight), (plan.Verdict.Class, plan.Verdict.Deciding.Factor));
        Assert.Equal(57.5 + 23.44 - 90, plan.Verdict.Deciding.Value!.Value, 0.1);
    }

    [Fact]
    public void A_night_without_sunset_is_planned_on_the_whole_span()
    {
        var plan = Clear(new LocalDate(2026, 6, 21), DateTimeZoneProviders.Tzdb["Arctic/Longyearbyen"], 78.2, 15.6);

        Assert.Equal(24 * 12, plan.Conditions.Count);
        Assert.Equal(VerdictClass.NoGo, plan.Verdict.Class);
    }

    [Fact]
    public void Conditions_cover_sunset_to_sunrise_every_five_minutes()
    {
        var plan = Clear(new LocalDate(2026, 8, 12), DesertNight.Zone, -24.6, 15.9);

        Assert.InRange(plan.Sky.Sun.Set!.Value - plan.Conditions[0].At, Duration.Zero, Duration.FromMinutes(5));
        Assert.InRange(plan.Sky.Sun.Rise!.Value - plan.Conditions[^1].At, Duration.Zero, Duration.FromMinutes(5));
        Assert.All(
            plan.Conditions.Zip(plan.Conditions.Skip(1)), pair => Assert.Equal(Duration.FromMinutes(5), pair.Second.At - pair.First.At));
        Assert.All(plan.Conditions, step => Assert.Equal(0.05, step.Cloud!.Value, 9));
    }

    private static NightPlan Clear(LocalDate night, DateTimeZone zone, double latitude, double longitude)
    {
        var watch = new DesertNight().Watch;
        var noon = night.At(new LocalTime(12, 0)).InZoneLeniently(zone).ToInstant();
        return NightPlanner.Plan(new NightInputs
        {
            Watch = watch with { Site = watch.Site with { Position = new GeoPosition(latitude, longitude), Zone = zone } },
            Night = night,
            Now = noon - Duration.FromHours(2),
            Weather = new PlaceWeather { Newest = new HourlyWeather().Series(noon, noon - Duration.FromHours(3)) },
            RainBefore = new(0, 72, 72),
        });
    }
}
