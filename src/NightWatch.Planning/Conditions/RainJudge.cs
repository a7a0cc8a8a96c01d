using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Amount of precipitation: a moment with a measurable amount is worthless.</summary>
internal static class RainJudge
{
    /// <summary>Its finding over a run.</summary>
    /// <param name="weather">The forecast.</param>
    /// <param name="severity">Of the share of the frames' worth that it leaves.</param>
    /// <param name="limits">The watch's.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="run">The run.</param>
    public static Reason Of(WeatherTrack weather, Severity severity, Limits limits, NightGrid grid, Run run)
    {
        var worst = Cells(weather, limits).Over(grid, run);
        // Any rain is worth a word, however short.
        var found = worst.Severity == Severity.Ok || severity == Severity.Stop ? severity : Severity.Caution;
        return worst.Value is { } mmPerH
            ? new RainAmount(found, worst.When, mmPerH, limits.PrecipitationMmPerH)
            {
                Mend = found == Severity.Ok ? null : new Mend.DryFor(limits.UsableRunMin),
            }
            : new RainNotKnown(worst.Severity, worst.When, limits.PrecipitationMmPerH) { Mend = new Mend.Knowledge(Mend.Missing.Rain) };
    }

    private static WorstCells Cells(WeatherTrack weather, Limits limits) =>
        new(weather.Rain, new Threshold(limits.PrecipitationMmPerH, limits.PrecipitationMmPerH));
}
