using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Conditions;

/// <summary>Probability of thunder; its stop is a hazard to people and outranks everything else.</summary>
/// <remarks>
/// Many feeds give none, or only for two days. Then a storm is ruled out where the air cannot make one (next to no convective energy)
/// or where the same forecast has no precipitation at all; anything else stays a caution.
/// </remarks>
internal static class ThunderJudge
{
    /// <summary>
    /// Convective energy below this makes no thunderstorm, J/kg. Common practice in forecasting, no published source; well under the few
    /// hundred that weak storms have.
    /// </summary>
    private const double StableCape = 50;

    /// <summary>Its finding over a run.</summary>
    public static Reason Of(WeatherTrack weather, Limits limits, NightGrid grid, Run run)
    {
        var worst = Cells(weather, limits).Over(grid, run);
        return worst.Value is { } probability
            ? new ThunderChance(worst.Severity, worst.When, probability, worst.At, limits.Thunder)
            {
                Mend = worst.Severity == Severity.Ok ? null : new Mend.ChanceBelow(limits.Thunder.Caution),
            }
            : new ThunderNotKnown(worst.Severity, worst.When, limits.Thunder.Caution)
            {
                Mend = worst.Severity == Severity.Ok ? null : new Mend.Knowledge(Mend.Missing.Thunder),
            };
    }

    private static WorstCells Cells(WeatherTrack weather, Limits limits) =>
        new(weather.Thunder, limits.Thunder, cell => IsRuledOut(weather, cell) ? Severity.Ok : Severity.Caution);

    private static bool IsRuledOut(WeatherTrack weather, int cell) => weather.Rain[cell] == 0 || weather.Cape[cell] < StableCape;
}
