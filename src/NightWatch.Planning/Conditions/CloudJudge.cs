using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Conditions;

/// <summary>Mean total cloud over the run. Single hours are beyond any forecast's skill; the mean of a window is not.</summary>
internal static class CloudJudge
{
    /// <summary>Its finding over a run.</summary>
    /// <param name="weather">The forecast.</param>
    /// <param name="limits">The watch's.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="run">The run.</param>
    public static Reason Of(WeatherTrack weather, Limits limits, NightGrid grid, Run run)
    {
        var limit = limits.Cloud;
        var mean = RunMean.Of(weather.Cloud, run);
        if (double.IsNaN(mean))
            return new CloudNotKnown(Severity.Caution, run.Span, limit.Caution) { Mend = new Mend.Knowledge(Mend.Missing.Cloud) };

        var (most, unknown, left) = (run.First, 0, 0.0);
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (double.IsNaN(weather.Cloud[cell]))
            {
                unknown++;
                continue;
            }

            if (!(weather.Cloud[cell] <= weather.Cloud[most])) most = cell;
            left += Share.Between(weather.Cloud[cell], limit.Caution, limit.Stop);
        }

        var severity = WorthSeverity.Of(left / (run.Count - unknown));
        if (unknown > 0 && severity == Severity.Ok) severity = Severity.Caution;
        var at = Instant.Max(grid.At(most), run.Span.Start);
        return new CloudMean(severity, run.Span, mean, weather.Cloud[most], at, limit, (double)unknown / run.Count)
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
