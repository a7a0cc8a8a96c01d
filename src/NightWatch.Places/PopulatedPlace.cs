namespace NightWatch.Places;

/// <summary>A town that lights the sky.</summary>
/// <param name="Name">As the gazetteer has it.</param>
/// <param name="LatitudeDeg">Degrees north.</param>
/// <param name="LongitudeDeg">Degrees east.</param>
/// <param name="Population">How many people live there.</param>
public readonly record struct PopulatedPlace(string Name, double LatitudeDeg, double LongitudeDeg, int Population);
