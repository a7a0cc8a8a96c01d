using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Gusts: they shake the rail between frames and throw tripods.</summary>
/// <remarks>
/// Where the feed gives no gusts they are taken from its mean wind: 1.66 times, the 3-second gust over 10 minutes for in-land terrain
/// (Harper, Kepert and Ginger 2010, WMO/TD-No. 1555; figure from memory). Such an estimate is a caution at most, except where the mean
/// wind alone passes the no-go limit.
/// </remarks>
internal static class WindJudge
{
    private const double InlandGustFactor = 1.66;

    /// <summary>Its share in the choice of the run.</summary>
    public static RunScale Scale(WeatherTrack weather, Limits limits) => Cells(weather, limits).Scale();

    /// <summary>Its finding over a run.</summary>
    public static Reason Of(WeatherTrack weather, Limits limits, NightGrid grid, Run run)
    {
        var worst = Cells(weather, limits).Over(grid, run);
        return worst.Value is { } gust
            ? new Gusts(worst.Severity, worst.When, gust, worst.At, limits.GustMps)
            {
                Mend = worst.Severity == Severity.Ok ? null : new Mend.GustsBelow(limits.GustMps.Caution),
            }
            : WithoutGusts(weather, limits.GustMps, run, worst.Severity);
    }

    private static WorstCells Cells(WeatherTrack weather, Limits limits) =>
        new(weather.GustMps, limits.GustMps, cell => FromMeanWind(weather.WindMps[cell], limits.GustMps));

    private static Severity FromMeanWind(double windMps, Threshold limit) =>
        windMps >= limit.Stop ? Severity.Stop
        : windMps * InlandGustFactor < limit.Caution ? Severity.Ok
        : Severity.Caution;

    private static Reason WithoutGusts(WeatherTrack weather, Threshold limit, Run run, Severity severity)
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
            var held = severity == Severity.Stop ? limit.Stop : limit.Caution;
            return new WindNotKnown(severity, run.Span, held) { Mend = new Mend.Knowledge(Mend.Missing.Wind) };
        }

        return new GustsFromMeanWind(severity, run.Span, most, most * InlandGustFactor, limit)
        {
            Mend = severity == Severity.Ok ? null : new Mend.MeanWindBelow(limit.Caution / InlandGustFactor),
        };
    }
}
