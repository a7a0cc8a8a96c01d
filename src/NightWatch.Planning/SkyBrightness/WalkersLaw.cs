namespace NightWatch.Planning.SkyBrightness;

/// <summary>Glow of one town.</summary>
/// <remarks>
/// Walker 1977, PASP 89, 405: increase over the natural sky at 45° altitude towards the town = 0.01 P r^−2.5. The coefficient is the one
/// in general use (given from memory); lamps per head have changed since, and real towns scatter about it by a factor of three either
/// way. Fitted from about 10 km outwards.
/// </remarks>
public static class WalkersLaw
{
    private const double Coefficient = 0.01;
    private const double IncreaseInTheMiddle = 40; // engineering choice: a town's own middle is four magnitudes over the natural sky

    /// <summary>Factor by which a town's real glow may be more or less.</summary>
    public const double Scatter = 3;

    /// <summary>Increase over the natural sky at 45° altitude towards the town, as a fraction.</summary>
    /// <param name="population">Inhabitants of the town.</param>
    /// <param name="distanceKm">To the middle of the town; nearer than its radius the law flattens (engineering choice).</param>
    public static double Increase(double population, double distanceKm)
    {
        var squared = distanceKm * distanceKm + RadiusSquaredKm2(population);
        // To the power 1.25 of the square.
        return population <= 0 ? 0 : Coefficient * population / (squared * Math.Sqrt(Math.Sqrt(squared)));
    }

    /// <summary>
    /// Share of that increase found at the zenith: a quarter from afar, all of it in the middle of town (engineering choice).
    /// </summary>
    public static double ZenithShare(double population, double distanceKm)
    {
        var radius = RadiusSquaredKm2(population);
        return 0.25 + 0.75 * radius / (radius + distanceKm * distanceKm);
    }

    // The distance at which the bare law would reach the increase in the middle.
    private static double RadiusSquaredKm2(double population) => Math.Pow(Coefficient / IncreaseInTheMiddle * Math.Max(1, population), 0.8);
}
