namespace NightWatch.Planning.Chance;

/// <summary>How far one of two forecasters is preferred to the other, by what came of what they said.</summary>
/// <param name="LogOdds">Log odds of the first one's weight. Kept so, a weight that comes near 1 can return.</param>
/// <remarks>
/// A weight w becomes w^0.985 times the likelihood of what came, shared out to 1 (Raftery, Karny and Ettler 2010, Technometrics 52, 52).
/// </remarks>
internal readonly record struct Preference(double LogOdds)
{
    /// <summary>Power of the past in each new night.</summary>
    private const double Forgetting = 0.985;

    /// <summary>The weight of the first, 0 to 1.</summary>
    public double Weight => 1 / (1 + Math.Exp(-LogOdds));

    /// <summary>A weight between 0 and 1.</summary>
    public static Preference Of(double weight) => new(Math.Log(weight / (1 - weight)));

    /// <summary>With one night more.</summary>
    /// <param name="logRatio">Logarithm of the likelihood of what came by the first, over that by the second.</param>
    public Preference After(double logRatio) => new(Forgetting * LogOdds + logRatio);
}
