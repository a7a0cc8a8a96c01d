using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Mean total cloud over the run. Single hours are beyond any forecast's skill; the mean of a window is not.</summary>
internal static class CloudJudge
{
    /// <summary>Its share in the choice of the run.</summary>
    public static MeanScale Scale(WeatherTrack weather, Limits limits) => new(weather.Cloud, limits.Cloud);

    /// <summary>Its finding over a run.</summary>
    public static Reason Of(WeatherTrack weather, Limits limits, NightGrid grid, Run run)
    {
        var scale = Scale(weather, limits);
        var severity = scale.Over(run.First, run.Last);
        var mean = scale.Mean(run.First, run.Last);
        var limit = limits.Cloud;
        if (double.IsNaN(mean))
            return new CloudNotKnown(severity, run.Span, limit.Caution) { Mend = new Mend.Knowledge(Mend.Missing.Cloud) };

        var most = run.First;
        var unknown = 0;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (double.IsNaN(weather.Cloud[cell])) unknown++;
            else if (!(weather.Cloud[cell] <= weather.Cloud[most])) most = cell;
        }

        return new CloudMean(severity, run.Span, mean, weather.Cloud[most], grid.At(most), limit, (double)unknown / run.Count)
        {
            Mend = MendOf(severity, limits),
        };
    }

    private static Mend? MendOf(Severity severity, Limits limits) => severity switch
    {
        Severity.Caution => new Mend.CloudAtMost(limits.Cloud.Caution, limits.UsableRunMin),
        Severity.Stop => new Mend.CloudBelow(limits.Cloud.Stop, limits.UsableRunMin),
        _ => null,
    };
}
