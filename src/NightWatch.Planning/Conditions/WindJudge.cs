using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Gusts: they shake the rail between frames and throw tripods.</summary>
/// <remarks>
/// Where the feed gives no gusts they are taken from its mean wind: 1.66 times, the 3-second gust over 10 minutes for in-land terrain
/// (Harper, Kepert and Ginger 2010, WMO/TD-No. 1555; figure from memory). Such an estimate takes no more than half of a frame's worth,
/// except where the mean wind alone passes the stop.
/// </remarks>
internal static class WindJudge
{
    public const double InlandGustFactor = 1.66;

    /// <summary>Its finding over a run.</summary>
    /// <param name="weather">The forecast.</param>
    /// <param name="severity">Of the share of the frames' worth that it leaves.</param>
    /// <param name="limits">The watch's.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="run">The run.</param>
    public static Reason Of(WeatherTrack weather, Severity severity, Limits limits, NightGrid grid, Run run)
    {
        var worst = Cells(weather, limits).Over(grid, run);
        return worst.Value is { } gust
            ? new Gusts(severity, worst.When, gust, worst.At, limits.GustMps)
            {
                Mend = severity == Severity.Ok ? null : new Mend.GustsBelow(limits.GustMps.Caution),
            }
            : WithoutGusts(weather, limits.GustMps, run, worst.Severity, severity);
    }

    private static WorstCells Cells(WeatherTrack weather, Limits limits) =>
        new(weather.GustMps, limits.GustMps, cell => FromMeanWind(weather.WindMps[cell], limits.GustMps));

    private static Severity FromMeanWind(double windMps, Threshold limit) =>
        windMps >= limit.Stop ? Severity.Stop
        : windMps * InlandGustFactor < limit.Caution ? Severity.Ok
        : Severity.Caution;

    private static Reason WithoutGusts(WeatherTrack weather, Threshold limit, Run run, Severity unknown, Severity severity)
    {
        var most = double.NaN;
        var gaps = false;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            var wind = double.IsNaN(weather.GustMps[cell]) ? weather.WindMps[cell] : weather.GustMps[cell] / InlandGustFactor;
            if (double.IsNaN(wind)) gaps = true;
            else if (!(wind <= most)) most = wind;
        }

        if (double.IsNaN(most) || gaps)
        {
            var held = unknown == Severity.Stop ? limit.Stop : limit.Caution;
            return new WindNotKnown(unknown == Severity.Ok ? Severity.Ok : Severity.Caution, run.Span, held)
            {
                Mend = new Mend.Knowledge(Mend.Missing.Wind),
            };
        }

        return new GustsFromMeanWind(severity, run.Span, most, most * InlandGustFactor, limit)
        {
            Mend = severity == Severity.Ok ? null : new Mend.MeanWindBelow(limit.Caution / InlandGustFactor),
        };
    }
}
