using NightWatch.Planning.Conditions;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Ground;

/// <summary>Follows rain, drainage and drying at the site from now to the night.</summary>
internal static class GroundPlanner
{
    /// <param name="site">Kind of ground and elevation.</param>
    /// <param name="hours">The weather.</param>
    /// <param name="antecedentMm">Rain of the 72 hours before; null: unknown.</param>
    /// <param name="arrive">When set-up begins.</param>
    /// <param name="start">The first frame.</param>
    public static GroundPlan Plan(Site site, HourTrack hours, double? antecedentMm, Instant arrive, Instant start)
    {
        var store = new double[hours.Count];
        var weather = new GroundWeather
        {
            StepS = HourTrack.Step.TotalSeconds,
            RainMmPerH = hours.RainMmPerH,
            AirC = hours.AirC,
            DewPointC = hours.DewPointC,
            WindMps = hours.WindMps,
            Cloud = hours.Cloud,
            SunAltitudeDeg = hours.SunAltitudeDeg,
        };
        GroundWater.Follow(site.Ground, antecedentMm ?? double.NaN, weather, site.Position.ElevationM, store);
        var at = hours.IndexAt(start);
        var state = GroundWater.StateOf(site.Ground, store[at]);
        var dryIn = state is GroundState.Damp or GroundState.Wet
            ? GroundWater.DryFromS(site.Ground, store, HourTrack.Step.TotalSeconds, at)
            : null;
        return new GroundPlan(
            GroundWater.StateOf(site.Ground, store[hours.IndexAt(arrive)]),
            state,
            double.IsNaN(store[at]) ? null : store[at],
            dryIn is { } seconds ? hours.Start + Duration.FromSeconds(seconds) : null);
    }
}
