using CsCheck;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Words.Tests;

/// <summary>
/// Nights as the planner plans them, over invented weather: places from the polar circle to the far south, kits that suffice and kits
/// that do not.
/// </summary>
internal static class PlannedNights
{
    private static readonly Gen<Site> Sites = One(
        SiteOf("pan", -24.8, 15.3, 570, "Africa/Windhoek", GroundKind.Clay),
        SiteOf("moor", 54.9, -3.2, 300, "Europe/London", GroundKind.Grass),
        SiteOf("fjord", 69.7, 19.0, 40, "Europe/Oslo", GroundKind.Rock),
        SiteOf("plain", 47.1, -101.3, 590, "America/Chicago", GroundKind.Gravel),
        SiteOf("dunes", 23.1, 54.2, 120, "Asia/Dubai", GroundKind.Sand));

    private static readonly Gen<Subject> Subjects = One<Subject>(
        new Subject.GalacticCore(), new Subject.GalacticBand(120), new Subject.FixedPoint("The loop", 84, -5), new Subject.Stars());

    private static readonly Gen<Kit> Kits = Gen.Select(
        One(0, 0.3, 4), One<double?>(null, 5, 80), One(new double[] { 5 }, [14.4, 14.4], [99, 99]), One(4.0, 128),
        One<int?>(null, 12_800))
        .Select((heaterW, batteryWh, packsWh, cardGb, iso) => new Kit
        {
            DewHeaterW = heaterW,
            DewHeaterBatteryWh = heaterW > 0 ? batteryWh : null,
            BatteriesWh = packsWh,
            CardGb = cardGb,
            Iso = iso,
            FNumber = iso is null ? 2.8 : 1.4,
        });

    private static readonly Gen<Limits> LimitsOfWatch = Gen.Select(
        Gen.Double[0.5, 12], Gen.Double[0.01, 0.5], Gen.Double[0, 3], Gen.Bool, Gen.Int[15, 240])
        .Select((gustMps, share, rainMmPerH, dry, runMin) => new Limits
        {
            GustMps = new Threshold(gustMps, 1.7 * gustMps),
            Cloud = new Threshold(share, Math.Min(1, 2 * share)),
            PrecipitationProbability = new Threshold(share, Math.Min(1, 2 * share)),
            Thunder = new Threshold(share / 5, share),
            Fog = new Threshold(share / 5, share),
            PrecipitationMmPerH = rainMmPerH,
            DarkNothingMag = 17 + 4 * share,
            DryGroundNeeded = dry,
            UsableRunMin = runMin,
        });

    private static readonly Gen<Watch> Watches = Gen.Select(
        Sites, Subjects, Kits, LimitsOfWatch, Gen.Bool).Select((site, subject, kit, limits, moves) => new Watch
        {
            Id = "any",
            Subscriber = new Subscriber("Rosa Amakali", "rosa.amakali@example.org"),
            Site = site,
            Subject = subject,
            Kit = kit,
            Limits = limits,
            Move = moves ? new Move { Start = new Heading(135, 22), End = new Heading(175, 40), RailM = 1.2 } : null,
        });

    /// <summary>Some night of some watch, with as much known of its weather as there happens to be.</summary>
    public static Gen<NightPlan> All { get; } = Gen.Select(
        Watches, Gen.Int[0, 900], Gen.Int[0, 6], Gen.Int[1, 400], Gen.Int[0, 3], Gen.Bool)
        .Select((watch, day, ahead, seed, known, rained) => Of(watch, new LocalDate(2026, 1, 1).PlusDays(day), ahead, seed, known, rained));

    private static NightPlan Of(Watch watch, LocalDate night, int ahead, int seed, int known, bool rained)
    {
        var now = watch.Site.Zone.AtLeniently(night.PlusDays(-ahead).At(new LocalTime(9, 0))).ToInstant();
        var noon = watch.Site.Zone.AtLeniently(night.At(LocalTime.Noon)).ToInstant();
        var place = new ForecastPlace(watch.Site.Position.LatitudeDeg, watch.Site.Position.LongitudeDeg, watch.Site.Position.ElevationM);
        var wanted = new Interval(now - Duration.FromHours(2), noon + Duration.FromHours(26));
        ForecastSeries Run(int world, int? member = null) => FakeForecastRun.Of(new FakeWeather(world), place, now, wanted, member);
        return NightPlanner.Plan(new NightInputs
        {
            Watch = watch,
            Night = night,
            Now = now,
            Weather = new PlaceWeather
            {
                Newest = known == 0 ? null : Run(seed),
                SecondOpinion = known == 2 ? Run(seed + 1) : null,
                Members = known == 3 ? [.. Enumerable.Range(0, 6).Select(member => Run(seed, member))] : [],
            },
            RainBefore = rained ? new RainBefore(seed % 40, 72, 72) : new RainBefore(null, known, 72),
        });
    }

    private static Gen<T> One<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Site SiteOf(
        string id, double latitudeDeg, double longitudeDeg, double elevationM, string zone, GroundKind ground) => new()
        {
            Id = id,
            Name = id,
            Position = new GeoPosition(latitudeDeg, longitudeDeg, elevationM),
            Zone = DateTimeZoneProviders.Tzdb[zone],
            Ground = ground,
        };
}
