namespace NightWatch.Places.Notations;

/// <summary>What a text that names a place means. Closed.</summary>
public abstract record PlaceReading
{
    private PlaceReading()
    {
    }

    /// <summary>The text gives coordinates.</summary>
    /// <param name="LatitudeDeg">Degrees north, WGS84.</param>
    /// <param name="LongitudeDeg">Degrees east, −180 to 180.</param>
    /// <param name="ElevationM">Metres, where the notation carries it (a geo: URI's third number); otherwise null.</param>
    /// <param name="Notation">Which notation it was, for people: "decimal degrees".</param>
    public sealed record Point(double LatitudeDeg, double LongitudeDeg, double? ElevationM, string Notation) : PlaceReading;

    /// <summary>A short Open Location Code, which means something near a named place only.</summary>
    /// <param name="Code">Upper case.</param>
    /// <param name="Near">The place's name as written; empty: none was given.</param>
    public sealed record ShortCode(string Code, string Near) : PlaceReading;

    /// <summary>Words, to be looked up in a gazetteer.</summary>
    /// <param name="Text">As written.</param>
    public sealed record Name(string Text) : PlaceReading;

    /// <summary>Looks like coordinates and is none.</summary>
    /// <param name="Why">One sentence: what is wrong and what is accepted.</param>
    public sealed record Wrong(string Why) : PlaceReading;
}
