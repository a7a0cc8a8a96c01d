using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>
/// The figure of a factor over hours that need not be the run, so that what was told over them is held against the same hours.
/// </summary>
public static class HoursFigure
{
    /// <summary>
    /// As its judge takes it over a run: mean cloud and fog, the most of rain, chance of rain, gusts, thunder and moonlight.
    /// </summary>
    /// <param name="plan">The night.</param>
    /// <param name="factor">What about.</param>
    /// <param name="hours">Which hours.</param>
    /// <returns>In the unit of the factor's reasons. Null: the factor has none by the hour, or it is not known for these hours.</returns>
    public static double? Of(NightPlan plan, Factor factor, Interval hours)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ConditionStep[] steps = [.. plan.Conditions.Where(step => step.At < hours.End && step.At + NightGrid.Step > hours.Start)];
        double?[] values = [.. steps.Select(step => At(step, factor, plan.Watch.Limits.FogVisibilityM)).Where(value => value is not null)];
        if (values.Length == 0) return null;
        return factor is Factor.Cloud or Factor.Fog ? values.Average() : values.Max();
    }

    /// <summary>Whether a factor's figure is of the run's hours, and so another over other hours.</summary>
    public static bool IsByHours(Factor factor) => factor is Factor.Thunder or Factor.Cloud or Factor.Rain or Factor.RainProbability
        or Factor.Wind or Factor.Fog or Factor.Moon or Factor.Dew;

    private static double? At(ConditionStep step, Factor factor, double fogVisibilityM) => factor switch
    {
        Factor.Thunder => step.ThunderProbability,
        Factor.Cloud => step.Cloud,
        Factor.Rain => step.RainMmPerH,
        Factor.RainProbability => step.RainProbability,
        Factor.Wind => step.GustMps ?? step.WindMps * WindJudge.InlandGustFactor,
        Factor.Fog => InFog(step, fogVisibilityM),
        Factor.Moon => step.MoonBrighteningMag,
        _ => null,
    };

    private static double? InFog(ConditionStep step, double fogVisibilityM)
    {
        double? seen = step.VisibilityM is { } metres ? metres < fogVisibilityM ? 1 : 0 : null;
        return step.Fog is { } share && seen is { } bySight ? Math.Max(share, bySight) : step.Fog ?? seen;
    }
}
