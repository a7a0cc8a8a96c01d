using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Amount of precipitation: any measurable hour stops the run.</summary>
internal static class RainJudge
{
    /// <summary>Its share in the choice of the run.</summary>
    public static RunScale Scale(WeatherTrack weather, Limits limits) => Cells(weather, limits).Scale();

    /// <summary>Its finding over a run.</summary>
    public static Reason Of(WeatherTrack weather, Limits limits, NightGrid grid, Run run)
    {
        var worst = Cells(weather, limits).Over(grid, run);
        return worst.Value is { } mmPerH
            ? new RainAmount(worst.Severity, worst.When, mmPerH, limits.PrecipitationMmPerH)
            {
                Mend = worst.Severity == Severity.Ok ? null : new Mend.DryFor(limits.UsableRunMin),
            }
            : new RainNotKnown(worst.Severity, worst.When, limits.PrecipitationMmPerH) { Mend = new Mend.Knowledge(Mend.Missing.Rain) };
    }

    private static WorstCells Cells(WeatherTrack weather, Limits limits) =>
        new(weather.Rain, new Threshold(limits.PrecipitationMmPerH, limits.PrecipitationMmPerH));
}
