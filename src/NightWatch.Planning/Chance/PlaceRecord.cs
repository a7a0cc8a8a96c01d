namespace NightWatch.Planning.Chance;

/// <summary>What the nights of one place taught: its climate, and how far the forecast is to be preferred to it.</summary>
/// <param name="Nights">Nights known.</param>
/// <param name="Usable">How many of them were usable; a share where several watches saw one night differently.</param>
/// <param name="Preference">Of the forecast to the climate.</param>
internal readonly record struct PlaceRecord(double Nights, double Usable, Preference Preference)
{
    /// <summary>The climate begins as if so many nights had been usable, and as many not.</summary>
    private const double NightsEach = 2;

    /// <summary>A certain error would outweigh any past.</summary>
    private const double LeastLikelihood = 1e-6;

    /// <summary>Before anything is known: the forecast has 0.8 of the weight, the climate is even.</summary>
    public static PlaceRecord Start { get; } = new(0, 0, Preference.Of(0.8));

    /// <summary>How often nights are usable, 0 to 1.</summary>
    public double Climate => (Usable + NightsEach) / (Nights + 2 * NightsEach);

    /// <summary>With one night more.</summary>
    /// <param name="looks">What the forecast said before, and what came; at least one; together they are one night.</param>
    public PlaceRecord After(IReadOnlyCollection<(double Forecast, bool Usable)> looks)
    {
        var climate = Climate;
        return new PlaceRecord(
            Nights + 1,
            Usable + looks.Average(look => look.Usable ? 1.0 : 0),
            Preference.After(looks.Average(look => Math.Log(Likelihood(look.Forecast, look.Usable) / Likelihood(climate, look.Usable)))));
    }

    private static double Likelihood(double said, bool came) => Math.Max(LeastLikelihood, came ? said : 1 - said);
}
