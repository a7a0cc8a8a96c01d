using NightWatch.Planning.Conditions;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Share of the run in fog, from the feed's fog share or from visibility below 1 km (WMO's definition).</summary>
/// <remarks>Where a feed gives neither, air well above its dew point rules fog out; nearer than that it stays a caution.</remarks>
internal sealed class FogFactor : FactorRule
{
    /// <summary>Air this far above its dew point holds no fog, K. Engineering choice: fog needs a depression near 1 K or less, and forecasts err by about as much again.</summary>
    private const double DryAirK = 2.5;

    public override Factor Factor => Factor.Fog;

    public override RunScale Scale(NightEvidence night) => new MeanScale(Shares(night), night.Limits.Fog);

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var run = plan.Run;
        var scale = new MeanScale(Shares(night), night.Limits.Fog);
        var severity = scale.Over(run.First, run.Last);
        var mean = scale.Mean(run.First, run.Last);
        var limit = severity == Severity.Stop ? night.Limits.Fog.Stop : night.Limits.Fog.Caution;
        var told = 0;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (!double.IsNaN(Told(night.Weather, cell, night.Limits.FogVisibilityM))) told++;
        }

        if (told == 0 && severity == Severity.Ok) return new Reason.FogRuledOut(run.Span, DryAirK, limit);

        if (double.IsNaN(mean) || (told < run.Count && severity == Severity.Caution && mean <= night.Limits.Fog.Caution))
            return new Reason.FogNotKnown(severity, run.Span, limit) { Mend = new Mend.Knowledge(Mend.Missing.Fog) };

        return new Reason.FogShare(severity, run.Span, mean, night.Limits.Fog)
        {
            Mend = severity == Severity.Ok ? null : new Mend.FogBelow(night.Limits.Fog.Caution),
        };
    }

    private static double[] Shares(NightEvidence night)
    {
        var shares = new double[night.Grid.Count];
        for (var cell = 0; cell < shares.Length; cell++)
        {
            var told = Told(night.Weather, cell, night.Limits.FogVisibilityM);
            shares[cell] = double.IsNaN(told) && night.Weather.AirC[cell] - night.Weather.DewPointC[cell] >= DryAirK ? 0 : told;
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
