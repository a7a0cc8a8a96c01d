using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>What a night was like by the weather that came, through the planner that made the calls.</summary>
internal static class SkySeen
{
    /// <summary>Null: the weather does not say, or the sky allowed no run whatever it was.</summary>
    public static NightOutcome? Of(Watch watch, LocalDate night, ForecastSeries weather, SharedSky sky)
    {
        var over = NightSpan.Of(watch.Site.Zone, night).End;
        return WeatherOutcome.Of(NightEvaluation.Came(watch, night, weather, over, sky));
    }
}
