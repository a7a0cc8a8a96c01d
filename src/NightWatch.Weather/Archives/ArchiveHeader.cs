namespace NightWatch.Weather.Archives;

/// <summary>The first line of an archive: of what place and feed it tells, and who must be named beside it.</summary>
/// <param name="Place">Name of the place.</param>
/// <param name="LatitudeDeg">Degrees north.</param>
/// <param name="LongitudeDeg">Degrees east.</param>
/// <param name="ElevationM">Metres above the sea.</param>
/// <param name="Zone">Id of the place's time zone; it is not looked up here.</param>
/// <param name="Feed">Id of the feed.</param>
/// <param name="Source">Whom the data come from, with the licence.</param>
public sealed record ArchiveHeader(string Place, double LatitudeDeg, double LongitudeDeg, double ElevationM,
    string Zone, string Feed, string Source);
