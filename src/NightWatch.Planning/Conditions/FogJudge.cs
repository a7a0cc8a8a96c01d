using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Share of the run in fog, from the feed's fog share or from visibility below 1 km (WMO's definition).</summary>
/// <remarks>Where a feed gives neither, air well above its dew point rules fog out; nearer than that it stays a caution.</remarks>
internal static class FogJudge
{
    /// <summary>Air this far above its dew point holds no fog, K. Engineering choice: fog needs a depression near 1 K or less, and forecasts err by about as much again.</summary>
    private const double DryAirK = 2.5;

    /// <summary>Its share in the choice of the run.</summary>
    public static MeanScale Scale(WeatherTrack weather, Limits limits) => new(Shares(weather, limits), limits.Fog);

    /// <summary>Its finding over a run.</summary>
    public static Reason Of(WeatherTrack weather, Limits limits, Run run)
    {
        var scale = Scale(weather, limits);
        var severity = scale.Over(run.First, run.Last);
        var mean = scale.Mean(run.First, run.Last);
        var limit = severity == Severity.Stop ? limits.Fog.Stop : limits.Fog.Caution;
        var told = 0;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (!double.IsNaN(Told(weather, cell, limits.FogVisibilityM))) told++;
        }

        if (told == 0 && severity == Severity.Ok) return new FogRuledOut(run.Span, DryAirK, limit);

        if (double.IsNaN(mean) || (told < run.Count && severity == Severity.Caution && mean <= limits.Fog.Caution))
            return new FogNotKnown(severity, run.Span, limit) { Mend = new Mend.Knowledge(Mend.Missing.Fog) };

        return new FogShare(severity, run.Span, mean, limits.Fog)
        {
            Mend = severity == Severity.Ok ? null : new Mend.FogBelow(limits.Fog.Caution),
        };
    }

    private static double[] Shares(WeatherTrack weather, Limits limits)
    {
        var shares = new double[weather.Fog.Length];
        for (var cell = 0; cell < shares.Length; cell++)
        {
            var told = Told(weather, cell, limits.FogVisibilityM);
            shares[cell] = double.IsNaN(told) && weather.AirC[cell] - weather.DewPointC[cell] >= DryAirK ? 0 : told;
        }

        return shares;
    }

    private static double Told(WeatherTrack weather, int cell, double fogVisibilityM)
    {
        var share = weather.Fog[cell];
        var visibility = weather.VisibilityM[cell];
        var seen = double.IsNaN(visibility) ? double.NaN : visibility < fogVisibilityM ? 1 : 0;
        return double.IsNaN(share) ? seen : double.IsNaN(seen) ? share : Math.Max(share, seen);
    }
}
