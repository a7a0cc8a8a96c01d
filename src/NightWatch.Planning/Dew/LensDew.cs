using NightWatch.Planning.Grid;

namespace NightWatch.Planning.Dew;

/// <summary>What the night does to the front element, with and without the heater.</summary>
public readonly record struct LensDewOutcome
{
    /// <summary>Seconds after the first sample at which dew or frost begins on the unheated element; null: not in the series.</summary>
    public double? OnsetS { get; init; }

    /// <summary>The first deposit is frost.</summary>
    public bool IsFrost { get; init; }

    /// <summary>Least margin of the unheated element above the dew (frost) point, K; NaN when nothing is known.</summary>
    public double LeastMarginK { get; init; }

    /// <summary>Heater power, W at the plug, that holds the wished margin through the worst sample; 0: none needed.</summary>
    public double HeaterNeededW { get; init; }

    /// <summary>Seconds after the first sample at which the heater should be on: the unheated element comes within the margin.</summary>
    public double? SwitchOnS { get; init; }

    /// <summary>With the kit's heater on from then, seconds until deposit nevertheless begins (again, where the lens was wet at once); null: it stays clear.</summary>
    public double? HeatedOnsetS { get; init; }

    /// <summary>Least margin with the kit's heater, K.</summary>
    public double HeatedLeastMarginK { get; init; }

    /// <summary>Samples with an unknown input: the outcome holds for the others only.</summary>
    public int UnknownSamples { get; init; }
}

/// <summary>Dew and frost on the lens through a night.</summary>
public static class LensDew
{
    /// <summary>Evaluates a night.</summary>
    /// <param name="element">The lens.</param>
    /// <param name="stepS">Seconds between samples.</param>
    /// <param name="startC">Element's temperature at the first sample, °C; NaN: the air's.</param>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="dewPointC">Dew point, °C.</param>
    /// <param name="cloud">Cloud cover as it counts for radiation, fraction.</param>
    /// <param name="windMps">Wind at 10 m, m/s.</param>
    /// <param name="heaterW">The kit's heater, W; 0: none.</param>
    /// <param name="marginK">Wished distance from the dew (frost) point, K.</param>
    /// <param name="elementC">Out: unheated element at each sample, °C.</param>
    /// <param name="marginsK">Out: its margin above the dew (frost) point, K; at 0 or below water or ice settles. NaN: unknown.</param>
    /// <param name="heatedMarginsK">Out: the margin with the kit's heater on from the switch-on; empty: not wanted.</param>
    /// <exception cref="ArgumentException">The spans differ in length, or the step is not above 0.</exception>
    public static LensDewOutcome Along(
        in FrontElement element,
        double stepS,
        double startC,
        ReadOnlySpan<double> airC,
        ReadOnlySpan<double> dewPointC,
        ReadOnlySpan<double> cloud,
        ReadOnlySpan<double> windMps,
        double heaterW,
        double marginK,
        Span<double> elementC,
        Span<double> marginsK,
        Span<double> heatedMarginsK = default)
    {
        LensHeat.Follow(element, stepS, startC, airC, dewPointC, cloud, windMps, 0, int.MaxValue, elementC);
        if (marginsK.Length != airC.Length) throw new ArgumentException("All series of the night must have one length.", nameof(marginsK));
        if (heatedMarginsK.Length != 0 && heatedMarginsK.Length != airC.Length)
            throw new ArgumentException("All series of the night must have one length.", nameof(heatedMarginsK));

        var needed = 0.0;
        var unknown = 0;
        for (var i = 0; i < airC.Length; i++)
        {
            var deposit = DewPoint.DepositPoint(dewPointC[i]);
            marginsK[i] = elementC[i] - deposit;
            if (double.IsNaN(marginsK[i])) unknown++;
            else if (marginsK[i] < marginK)
                needed = Math.Max(needed, LensHeat.PowerToHoldW(element, deposit + marginK, airC[i], dewPointC[i], cloud[i], windMps[i]));
        }

        var onset = Crossing.FirstAtOrBelow(marginsK, 0, stepS);
        var switchOn = Crossing.FirstAtOrBelow(marginsK, marginK, stepS);
        var outcome = new LensDewOutcome
        {
            OnsetS = onset,
            IsFrost = onset is { } at && dewPointC[Math.Min(dewPointC.Length - 1, (int)Math.Ceiling(at / stepS))] < 0,
            LeastMarginK = Least(marginsK),
            HeaterNeededW = needed,
            SwitchOnS = switchOn,
            UnknownSamples = unknown,
        };
        if (heaterW <= 0 || switchOn is not { } on)
        {
            if (heatedMarginsK.Length > 0) marginsK.CopyTo(heatedMarginsK);
            return outcome with { HeatedOnsetS = onset, HeatedLeastMarginK = outcome.LeastMarginK };
        }

        const int onStack = 512;
        Span<double> heated = heatedMarginsK.Length > 0 ? heatedMarginsK : airC.Length <= onStack ? stackalloc double[onStack] : new double[airC.Length];
        heated = heated[..airC.Length];
        LensHeat.Follow(element, stepS, startC, airC, dewPointC, cloud, windMps, heaterW, (int)(on / stepS), heated);
        for (var i = 0; i < airC.Length; i++) heated[i] -= DewPoint.DepositPoint(dewPointC[i]);
        // A lens that comes out of the bag into saturated air is wet at once; what counts is whether the heater dries it and keeps it so.
        var dry = FirstAboveZero(heated);
        return outcome with { HeatedOnsetS = dry < 0 ? Crossing.FirstAtOrBelow(heated, 0, stepS) : Crossing.FirstAtOrBelow(heated, 0, stepS, dry), HeatedLeastMarginK = Least(heated[Math.Max(0, dry)..]) };
    }

    private static int FirstAboveZero(ReadOnlySpan<double> values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] > 0) return i;
        }

        return -1;
    }

    private static double Least(ReadOnlySpan<double> values)
    {
        var least = double.NaN;
        foreach (var value in values)
        {
            if (!(value >= least)) least = double.IsNaN(value) ? least : value;
        }

        return least;
    }
}
