using System.Text.Json.Serialization;

namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>From a probability as computed to one that comes as often as it says.</summary>
[JsonDerivedType(typeof(Off), "off")]
[JsonDerivedType(typeof(Logistic), "logistic")]
[JsonDerivedType(typeof(Isotonic), "isotonic")]
public abstract record CalibrationMap
{
    /// <summary>Nothing learnt from a record of the past is surer than this: nights of one spell are not independent (engineering choice).</summary>
    public const double Least = 0.01;

    private CalibrationMap()
    {
    }

    /// <summary>The calibrated probability.</summary>
    /// <param name="probability">As computed, 0 to 1.</param>
    public abstract double Apply(double probability);

    private static double Held(double probability) => Math.Clamp(probability, Least, 1 - Least);

    /// <summary>Leaves it as it is.</summary>
    public sealed record Off : CalibrationMap
    {
        /// <inheritdoc/>
        public override double Apply(double probability) => probability;
    }

    /// <summary><c>1/(1 + exp(−(a + b·logit p)))</c> (Cox 1958, Biometrika 45, 562).</summary>
    /// <param name="Intercept">a; 0 leaves it.</param>
    /// <param name="Slope">b; 1 leaves it, less than 1 draws what was too sure towards the middle.</param>
    public sealed record Logistic(double Intercept, double Slope) : CalibrationMap
    {
        /// <inheritdoc/>
        public override double Apply(double probability) => Held(1 / (1 + Math.Exp(-(Intercept + Slope * LogisticFit.Logit(probability)))));
    }

    /// <summary>A curve that never falls, straight between its knots and level beyond them.</summary>
    /// <param name="Knots">Ascending in what was said; at least one.</param>
    public sealed record Isotonic(IReadOnlyList<CalibrationKnot> Knots) : CalibrationMap
    {
        /// <inheritdoc/>
        public override double Apply(double probability)
        {
            var above = 0;
            while (above < Knots.Count && Knots[above].Said < probability) above++;
            if (above == 0) return Held(Knots[0].Came);
            if (above == Knots.Count) return Held(Knots[^1].Came);
            var (low, high) = (Knots[above - 1], Knots[above]);
            return Held(low.Came + (high.Came - low.Came) * (probability - low.Said) / (high.Said - low.Said));
        }

        /// <summary>The same knots, whatever list they stand in.</summary>
        public bool Equals(Isotonic? other) => other is not null && Knots.SequenceEqual(other.Knots);

        /// <inheritdoc/>
        public override int GetHashCode() => Knots.Aggregate(0, HashCode.Combine);
    }
}

/// <summary>A point of an isotonic map.</summary>
/// <param name="Said">Probability as computed.</param>
/// <param name="Came">Share that came.</param>
public readonly record struct CalibrationKnot(double Said, double Came);
