using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>How bright the clear sky at the subject comes out in the frames, as a share of saturation (ISO 12232).</summary>
/// <param name="Least">At the darkest.</param>
/// <param name="Most">At the brightest.</param>
/// <param name="WashedOutFrom">From when it passes the watch's limit; null: never in the sequence.</param>
/// <param name="LastSoundShot">Number of the last frame before that, from 1; null: the first is already washed out.</param>
public sealed record SkyLevelPlan(double Least, double Most, Instant? WashedOutFrom, int? LastSoundShot);
