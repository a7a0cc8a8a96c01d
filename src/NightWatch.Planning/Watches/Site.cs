using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Planning.Watches;

/// <summary>How fast the ground at a site drains and dries.</summary>
public enum GroundKind
{
    /// <summary>Bare rock or paving: holds a film, dries first.</summary>
    Rock,

    /// <summary>Gravel or shingle.</summary>
    Gravel,

    /// <summary>Sand.</summary>
    Sand,

    /// <summary>Grass or moor.</summary>
    Grass,

    /// <summary>Clay, silt, dry lake bed: stays soft longest.</summary>
    Clay,
}

/// <summary>A saved place.</summary>
public sealed record Site
{
    /// <summary>Short name for commands and links: lower-case letters, digits, hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What the photographer calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Where it is.</summary>
    public required GeoPosition Position { get; init; }

    /// <summary>Its IANA zone.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>Its skyline.</summary>
    public HorizonProfile Horizon { get; init; } = HorizonProfile.Level;

    /// <summary>Night-sky brightness at the zenith as measured there, V mag/arcsec²; null: estimated.</summary>
    public double? MeasuredSkyBrightness { get; init; }

    /// <summary>What one stands on.</summary>
    public GroundKind Ground { get; init; } = GroundKind.Grass;

    /// <summary>How to get there, where to park, who to ask.</summary>
    public string? AccessNotes { get; init; }
}
