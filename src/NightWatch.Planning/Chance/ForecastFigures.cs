namespace NightWatch.Planning.Chance;

/// <summary>What one forecast run says of one night, for one watch with its needs done.</summary>
/// <param name="UsableMin">Usable minutes of the best stretch: the sum of worth times minutes over it, 0 or more.</param>
/// <param name="WorthMin">The sum of worth times minutes over all of the sky's windows, 0 or more.</param>
/// <param name="Stretch">Greatest mean, over as many minutes as are needed, of clear share times dark share, 0 to 1.</param>
/// <param name="GustMps">Mean gust over the windows, m/s; NaN: unknown.</param>
/// <param name="RainProbability">Greatest probability of rain over the windows, a fraction from 0 to 1; NaN: unknown.</param>
public readonly record struct ForecastFigures(double UsableMin, double WorthMin, double Stretch, double GustMps, double RainProbability)
{
    /// <summary>Refuses what cannot be.</summary>
    /// <exception cref="ArgumentException">A figure outside its range, named.</exception>
    internal void Check()
    {
        Hold(double.IsFinite(UsableMin) && UsableMin >= 0, nameof(UsableMin), UsableMin, "0 or more minutes");
        Hold(double.IsFinite(WorthMin) && WorthMin >= 0, nameof(WorthMin), WorthMin, "0 or more minutes");
        Hold(Stretch is >= 0 and <= 1, nameof(Stretch), Stretch, "0 to 1");
        Hold(GustMps is not (< 0 or double.PositiveInfinity), nameof(GustMps), GustMps, "0 or more, or NaN");
        Hold(RainProbability is not (< 0 or > 1), nameof(RainProbability), RainProbability, "0 to 1, or NaN");
    }

    private static void Hold(bool holds, string name, double value, string accepted)
    {
        if (!holds) throw new ArgumentException($"{name} is {value}; accepted: {accepted}.");
    }
}
