using NodaTime;

namespace NightWatch.Weather.Rain;

/// <summary>The rain of one hour as it was last said.</summary>
/// <param name="Hour">Its start, on the full hour.</param>
/// <param name="Mm">Rain, mm.</param>
/// <param name="SaidAt">When the forecast was retrieved: of two sayings the later counts, since its lead was shorter.</param>
public readonly record struct RainEntry(Instant Hour, double Mm, Instant SaidAt);
