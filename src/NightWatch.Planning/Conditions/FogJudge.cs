using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Share of the run in fog, from the feed's fog share or from visibility below 1 km (WMO's definition).</summary>
/// <remarks>Where a feed gives neither, air well above its dew point rules fog out; nearer than that it stays a caution.</remarks>
internal static class FogJudge
{
    /// <summary>
    /// Air this far above its dew point holds no fog, K. Engineering choice: fog needs a depression near 1 K or less, and forecasts err by
    /// about as much again.
    /// </summary>
    private const double DryAirK = 2.5;

    /// <summary>Its finding over a run.</summary>
    /// <param name="weather">The forecast.</param>
    /// <param name="limits">The watch's.</param>
    /// <param name="run">The run.</param>
    public static Reason Of(WeatherTrack weather, Limits limits, Run run)
    {
        var (told, open, sum, left) = (0, 0, 0.0, 0.0);
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            var share = Told(weather, cell, limits.FogVisibilityM);
            if (!double.IsNaN(share)) told++;
            else if (weather.AirC[cell] - weather.DewPointC[cell] >= DryAirK) share = 0;
            else open++;
            if (double.IsNaN(share)) continue;
            sum += share;
            left += Share.Between(share, limits.Fog.Caution, limits.Fog.Stop);
        }

        if (told == 0 && open == 0) return new FogRuledOut(run.Span, DryAirK, limits.Fog.Caution);

        var known = run.Count - open;
        var severity = known == 0 ? Severity.Caution : WorthSeverity.Of(left / known);
        if (known == 0 || (open > 0 && severity == Severity.Ok))
            return new FogNotKnown(Severity.Caution, run.Span, limits.Fog.Caution) { Mend = new Mend.Knowledge(Mend.Missing.Fog) };

        return new FogShare(severity, run.Span, sum / known, limits.Fog)
        {
            Mend = severity == Severity.Ok ? null : new Mend.FogBelow(limits.Fog.Caution),
        };
    }

    /// <summary>Share in fog at a cell as the feed tells it, by its fog or its visibility; NaN: by neither.</summary>
    public static double Told(WeatherTrack weather, int cell, double fogVisibilityM)
    {
        var share = weather.Fog[cell];
        var visibility = weather.VisibilityM[cell];
        var seen = double.IsNaN(visibility) ? double.NaN : visibility < fogVisibilityM ? 1 : 0;
        return double.IsNaN(share) ? seen : double.IsNaN(seen) ? share : Math.Max(share, seen);
    }
}
