namespace NightWatch.Planning.Dew;

/// <summary>What is asked of a lens in a night.</summary>
/// <param name="StartC">Its temperature at the first sample, °C; NaN: the air's.</param>
/// <param name="HeaterW">The kit's heater, W; 0: none.</param>
/// <param name="MarginK">Wished distance from the dew (frost) point, K.</param>
public readonly record struct LensWish(double StartC, double HeaterW, double MarginK)
{
    /// <summary>Seconds after the first sample by which the heater must have dried a lens that was wet at once: the first frame.</summary>
    public double DryByS { get; init; } = double.PositiveInfinity;
}
