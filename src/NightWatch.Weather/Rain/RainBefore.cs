namespace NightWatch.Weather.Rain;

/// <summary>Rain that has fallen by now, as far as it is known.</summary>
/// <param name="Mm">The sum over the window, mm; null unless every hour of it is known.</param>
/// <param name="KnownHours">Whole hours of the window that are known.</param>
/// <param name="WindowHours">Length of the window, hours.</param>
public readonly record struct RainBefore(double? Mm, int KnownHours, int WindowHours)
{
    /// <summary>Nothing is known of the last three days.</summary>
    public static RainBefore Unknown { get; } = new(null, 0, 72);
}
