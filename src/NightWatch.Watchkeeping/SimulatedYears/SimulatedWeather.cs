using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Time;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>The planner over one site's invented weather, as it would have been forecast and as it came.</summary>
/// <param name="weather">The world.</param>
/// <param name="watch">Of the site.</param>
/// <param name="sky">Kept between nights.</param>
/// <param name="members">Members of the ensemble beside the newest run; 0: none, earlier runs stand beside it alone.</param>
internal sealed class SimulatedWeather(FakeWeather weather, Watch watch, SharedSky sky, int members = 0)
{
    /// <summary>Runs are kept for this night alone.</summary>
    private const int MostKept = 40;

    private static readonly LocalTime look = new(15, 0);
    private static readonly Duration rainMemory = Duration.FromHours(72);
    private static readonly Duration slack = Duration.FromHours(1);

    private readonly ForecastPlace place = NightEvaluation.PlaceOf(watch);
    private readonly Dictionary<(Instant IssuedAt, LocalDate Night), PlaceWeather> known = [];

    /// <summary>The night without any weather: whether the sky allows it.</summary>
    public NightPlan SkyOf(LocalDate night) => Plan(night, NoonOf(night), PlaceWeather.Unknown);

    /// <summary>The night as it would have been planned at an instant.</summary>
    public NightPlan PlanAt(Instant now, LocalDate night, Interval dark, VerdictClass? told) =>
        Plan(night, now, KnownAt(now, night, dark), told);

    /// <summary>The look at 15:00 so many nights ahead, as an archive of forecasts is looked at.</summary>
    public ArchivedLook LookAt(int lead, LocalDate night, Interval dark)
    {
        var at = LocalClock.At(watch.Site.Zone, night.PlusDays(-lead), look);
        return ArchivedLook.Of(lead, at, PlanAt(at, night, dark, told: null), KnownAt(at, night, dark).Newest, dark);
    }

    /// <summary>The night with the weather that came.</summary>
    public NightPlan TruthOf(LocalDate night)
    {
        // As in the rehearsal: a run issued after the night holds its hours as they were.
        var after = NoonOf(night) + Duration.FromHours(30);
        return NightEvaluation.Came(
            watch, night, FakeForecastRun.Of(weather, place, after, new Interval(after - rainMemory - slack, after + slack)), after, sky);
    }

    private PlaceWeather KnownAt(Instant now, LocalDate night, Interval dark)
    {
        var key = (FakeForecastRun.NewestAt(now), night);
        if (known.TryGetValue(key, out var found)) return found;
        if (known.Count > MostKept) known.Clear();
        var wanted = new Interval(dark.Start - slack, dark.End + slack);
        found = new PlaceWeather
        {
            Newest = FakeForecastRun.Of(weather, place, now, new Interval(now - rainMemory - slack, wanted.End)),
            EarlierRuns =
            [
                .. Enumerable
                    .Range(1, ForecastSource.EarlierRuns)
                    .Select(runs => FakeForecastRun.Of(weather, place, now - runs * FakeForecastRun.Every, wanted)),
            ],
            Members = [.. Enumerable.Range(0, members).Select(member => FakeForecastRun.Of(weather, place, now, wanted, member))],
        };
        known.Add(key, found);
        return found;
    }

    private Instant NoonOf(LocalDate night) => NightSpan.Noon(watch.Site.Zone, night);

    private NightPlan Plan(LocalDate night, Instant now, PlaceWeather known, VerdictClass? told = null) =>
        NightEvaluation.Of(watch, night, known, ChanceBook.Unlearnt, now, sky, lastTold: told).Plan;
}
