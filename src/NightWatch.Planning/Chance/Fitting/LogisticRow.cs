using System.Collections.Immutable;

namespace NightWatch.Planning.Chance.Fitting;

/// <summary>One observation of a logistic regression.</summary>
/// <param name="Figures">What was known before, the constant among them.</param>
/// <param name="Came">What came.</param>
/// <param name="Weight">How much it counts; not negative.</param>
public readonly record struct LogisticRow(ImmutableArray<double> Figures, bool Came, double Weight = 1);
