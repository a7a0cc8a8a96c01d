using NightWatch.Planning.Nights;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>
/// Nights as the planner plans them over the invented weather of a seed, with the runs of the last day behind the chance.
/// </summary>
/// <param name="seed">Another seed, another world.</param>
internal sealed class InventedWeather(long seed)
{
    private static readonly Duration BetweenRuns = Duration.FromHours(6);

    private static readonly SkyEphemeris Ephemeris = new(32);

    private static readonly Dictionary<string, SiteSkyGlow> Glows = new[] { Ines.CoreWatch.Site, Ines.SaltShelf.Site }
        .ToDictionary(site => site.Id, site => SiteSkyGlow.Of(site.Position, site.MeasuredSkyBrightness));

    private readonly FakeWeather weather = new(seed);

    /// <summary>A night as it is planned at an instant, from the newest run that is out, for a reader who was told so last.</summary>
    public NightPlan Plan(Watch watch, LocalDate night, Instant now, VerdictClass? told = null)
    {
        var site = watch.Site;
        var place = new ForecastPlace(site.Position.LatitudeDeg, site.Position.LongitudeDeg, site.Position.ElevationM);
        var wanted = new Interval(now - Duration.FromHours(73), Instant.Max(now, Ines.Local(night.PlusDays(1), 12, 0, site.Zone)));
        var series = FakeForecastRun.Of(weather, place, now, wanted);
        return NightPlanner.Plan(
            new NightInputs
            {
                Watch = watch,
                Night = night,
                Now = now,
                LastTold = told,
                Weather = new PlaceWeather
                {
                    Newest = series,
                    EarlierRuns =
                    [
                        .. Enumerable.Range(1, 3).Select(back => FakeForecastRun.Of(weather, place, now - back * BetweenRuns, wanted)),
                    ],
                },
                Glow = Glows.GetValueOrDefault(site.Id),
                RainBefore = RainLedger.Antecedent(series, [], now),
            },
            Ephemeris);
    }
}
