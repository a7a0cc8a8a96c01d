using CsCheck;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Tests.Nights;

/// <summary>Places under the same weather differ by their sky alone, and that is how they are ranked.</summary>
public sealed class BetterPlaceTests
{
    private static readonly LocalDate NewMoon = new(2026, 6, 14);

    private static readonly RealNight City = new(-33.45, -70.66, "America/Santiago", NewMoon)
    {
        Id = "city",
        ElevationM = 520,
        MeasuredMag = 16.7,
    };

    private static readonly RealNight Hills = new(-30.2, -70.8, "America/Santiago", NewMoon) { Id = "hills", ElevationM = 2000 };

    [Fact]
    public void The_middle_of_a_city_is_no_place_for_the_core_whatever_the_weather()
    {
        var verdict = City.Plan().Verdict;

        Assert.Equal(
            (VerdictClass.NoGo, ProbabilityBasis.SkyAlone, 0.0), (verdict.Class, verdict.Probability.Basis, verdict.Probability.Value));
        var glow = Assert.IsType<SiteGlow>(verdict.Deciding);
        Assert.Equal((16.7, true, "Santiago"), (Math.Round(glow.ZenithMag, 6), glow.IsMeasured, glow.Strongest!.Town));
        Assert.IsType<Mend.DarkerSite>(glow.Mend);
    }

    [Fact]
    public void Dark_hills_the_same_night_are_a_go_and_the_only_alternative()
    {
        var (city, hills) = (City.Plan(), Hills.Plan());

        Assert.Equal(VerdictClass.Go, hills.Verdict.Class);
        Assert.True(Alternatives.Promise(hills) > Alternatives.Promise(city));
        var here = City.Plan().Watch with { Outing = new() { MostDriveKm = 1000 } };
        Assert.Equal(["hills"], Alternatives.Rank(here, [city, hills], city.MadeAt).Select(alternative => alternative.Plan.Watch.Id));
    }

    /// <summary>
    /// Seen before: the sky's minutes stood for those of an overcast run, which so was ranked above one with some good frames.
    /// </summary>
    [Fact]
    public void Overcast_promises_no_good_frames_however_long_the_night()
    {
        var (overcast, partly) = ((Hills with { Cloud = 1 }).Plan(), (Hills with { Cloud = 0.25 }).Plan());

        Assert.Equal(0, overcast.Verdict.UsableMin);
        Assert.True(partly.Verdict.UsableMin > 90);
        Assert.True(Alternatives.Promise(overcast) < Alternatives.Promise(partly));
    }

    /// <summary>With the Moon up too, which brightens the dark place by more magnitudes than the city.</summary>
    [Fact]
    public void The_darker_of_two_places_is_never_ranked_below() =>
        Gen.Select(Gen.Double[16, 22], Gen.Double[0, 3], Gen.Int[0, 364], Gen.Double[0, 0.6], Gen.Double[0, 15], Gen.Int[0, 2])
            .Sample(
                (mag, darker, day, cloud, gust, what) =>
                {
                    var bright = Hills with
                    {
                        Id = "bright",
                        MeasuredMag = mag,
                        Date = NewMoon.PlusDays(day),
                        Cloud = cloud,
                        Gust = gust,
                        Subject = what switch
                        {
                            0 => new Subject.GalacticCore(),
                            1 => new Subject.GalacticBand(290),
                            _ => new Subject.Stars(),
                        },
                    };
                    var (worse, better) = (bright.Plan(), (bright with { Id = "dark", MeasuredMag = mag + darker }).Plan());
                    var ranked = Alternatives
                        .Rank(worse.Watch, [better, worse], worse.MadeAt)
                        .Select(alternative => alternative.Plan.Watch.Id)
                        .ToList();

                    Assert.True(
                        better.Verdict.Class >= worse.Verdict.Class || better.Verdict.HoldsOnceDone,
                        $"{better.Verdict.Class} below {worse.Verdict.Class}");
                    Assert.True(
                        Alternatives.Promise(better) >= Alternatives.Promise(worse) - 1e-6,
                        $"{Alternatives.Promise(better)} below {Alternatives.Promise(worse)}");
                    Assert.True(ranked is [] or ["dark"] or ["dark", "bright"], string.Join(", ", ranked));
                },
                iter: 1000);
}
