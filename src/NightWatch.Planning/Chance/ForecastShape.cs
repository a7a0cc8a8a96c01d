namespace NightWatch.Planning.Chance;

/// <summary>Three figures of a night's forecast, without unit, each with a fixed centre; more of each is better.</summary>
/// <param name="Share">Log odds of the runs that reach the need; of one run alone, by how much it does.</param>
/// <param name="Worth">Logarithm of the night's worth against the need.</param>
/// <param name="Stretch">How clear and dark the best hours are, about their half.</param>
public readonly record struct ForecastShape(double Share, double Worth, double Stretch);
