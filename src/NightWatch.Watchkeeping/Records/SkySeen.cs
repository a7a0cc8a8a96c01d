using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Known;
using NightWatch.Weather.Observations;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>What a night was like by the weather that came, through the planner that made the calls.</summary>
internal static class SkySeen
{
    /// <summary>From the first to the last instant of the night's dark; the whole night where it does not get dark.</summary>
    public static Interval DarkOf(Watch watch, LocalDate night, SharedSky sky)
    {
        var span = NightSpan.Of(watch.Site.Zone, night);
        var inputs = NightEvaluation.InputsOf(watch, night, PlaceWeather.Unknown, ChanceBook.Shipped, span.Start, sky);
        var parts = NightPlanner.SkyOf(inputs, sky.Ephemeris).AstronomicalNight;
        return parts.Count > 0 ? new Interval(parts[0].Start, parts[^1].End) : span;
    }

    /// <summary>Null: the sky allowed no run whatever the weather was.</summary>
    public static NightOutcome? Of(Watch watch, LocalDate night, SeenHours seen, SharedSky sky)
    {
        var best = Came(seen.Best);
        return WeatherOutcome.Between(best, seen.IsWhole ? best : Came(seen.Worst));

        NightPlan Came(ForecastSeries hours) => NightEvaluation.Came(watch, night, hours, NightSpan.Of(watch.Site.Zone, night).End, sky);
    }
}
