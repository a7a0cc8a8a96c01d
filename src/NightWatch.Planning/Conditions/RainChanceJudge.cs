using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Probability of precipitation: a caution at most, as it is part of the chance.</summary>
/// <remarks>
/// Some feeds give none in some regions. A forecast amount of exactly 0 mm stands in for it then; anything wetter stays a caution.
/// </remarks>
internal static class RainChanceJudge
{
    /// <summary>Its finding over a run.</summary>
    public static Reason Of(WeatherTrack weather, Limits limits, NightGrid grid, Run run)
    {
        var limit = limits.PrecipitationProbability;
        var worst = Cells(weather, limits).Over(grid, run);
        return worst.Value is { } probability
            ? new RainChance(worst.Severity == Severity.Ok ? Severity.Ok : Severity.Caution, worst.When, probability, worst.At, limit)
            {
                Mend = worst.Severity == Severity.Ok ? null : new Mend.ChanceBelow(limit.Caution),
            }
            : new RainChanceNotKnown(worst.Severity, worst.When, limit.Caution)
            {
                Mend = worst.Severity == Severity.Ok ? null : new Mend.Knowledge(Mend.Missing.RainChance),
            };
    }

    private static WorstCells Cells(WeatherTrack weather, Limits limits) =>
        new(weather.RainProbability, limits.PrecipitationProbability, cell => weather.Rain[cell] == 0 ? Severity.Ok : Severity.Caution);
}
