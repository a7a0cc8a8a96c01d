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

    /// <summary>
    /// With the kit's heater on from then, seconds until deposit nevertheless begins (again, where the lens was wet at once); null: it
    /// stays clear.
    /// </summary>
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
    /// <param name="air">The air around it.</param>
    /// <param name="wish">What is asked of it.</param>
    /// <param name="into">Where its samples go.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public static LensDewOutcome Along(in FrontElement element, in NightAir air, in LensWish wish, in LensSamples into)
    {
        var elementC = into.ElementC;
        var marginsK = into.MarginsK;
        var heatedMarginsK = into.HeatedMarginsK;
        var (stepS, marginK) = (air.StepS, wish.MarginK);
        LensHeat.Follow(element, air, wish.StartC, 0, int.MaxValue, elementC);
        if (marginsK.Length != air.Count || (heatedMarginsK.Length != 0 && heatedMarginsK.Length != air.Count))
            throw new ArgumentException("All series of the night must have one length.", nameof(into));

        var needed = 0.0;
        var unknown = 0;
        for (var i = 0; i < air.Count; i++)
        {
            var deposit = DewPoint.DepositPoint(air.DewPointC[i]);
            marginsK[i] = elementC[i] - deposit;
            if (double.IsNaN(marginsK[i])) unknown++;
            else if (marginsK[i] < marginK)
                needed = Math.Max(
                    needed, LensHeat.PowerToHoldW(element, deposit + marginK, air.AirC[i], air.DewPointC[i], air.Cloud[i], air.WindMps[i]));
        }

        var onset = Crossing.FirstAtOrBelow(marginsK, 0, stepS);
        var switchOn = Crossing.FirstAtOrBelow(marginsK, marginK, stepS);
        var outcome = new LensDewOutcome
        {
            OnsetS = onset,
            IsFrost = onset is { } at && air.DewPointC[Math.Min(air.Count - 1, (int)Math.Ceiling(at / stepS))] < 0,
            LeastMarginK = Least(marginsK),
            HeaterNeededW = needed,
            SwitchOnS = switchOn,
            UnknownSamples = unknown,
        };
        if (wish.HeaterW <= 0 || switchOn is not { } on)
        {
            if (heatedMarginsK.Length > 0) marginsK.CopyTo(heatedMarginsK);
            return outcome with { HeatedOnsetS = onset, HeatedLeastMarginK = outcome.LeastMarginK };
        }

        const int onStack = 512;
        Span<double> heated =
            heatedMarginsK.Length > 0 ? heatedMarginsK
            : air.Count <= onStack ? stackalloc double[onStack]
            : new double[air.Count];
        heated = heated[..air.Count];
        LensHeat.Follow(element, air, wish.StartC, wish.HeaterW, (int)(on / stepS), heated);
        for (var i = 0; i < air.Count; i++) heated[i] -= DewPoint.DepositPoint(air.DewPointC[i]);
        // A lens that comes out of the bag into saturated air is wet at once. What counts is whether the heater has dried it by the
        // first frame and keeps it so: one that dries later spoils the frames before.
        var dry = FirstAboveZero(heated);
        if (dry * stepS > wish.DryByS) dry = -1;
        return outcome with
        {
            HeatedOnsetS = dry < 0 ? Crossing.FirstAtOrBelow(heated, 0, stepS) : Crossing.FirstAtOrBelow(heated, 0, stepS, dry),
            HeatedLeastMarginK = Least(heated[Math.Max(0, dry)..]),
        };
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
