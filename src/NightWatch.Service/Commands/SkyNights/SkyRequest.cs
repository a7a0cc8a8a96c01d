using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>One site and one night of the sky command.</summary>
internal readonly record struct SkyRequest(GeoPosition Position, DateTimeZone Zone, LocalDate Night, Subject Subject, double MinAltitudeDeg)
{
    /// <summary>The subject's name on the command line.</summary>
    public const string GalacticCore = "galactic-core";

    /// <summary>No subject: stars are enough.</summary>
    public const string Stars = "stars";

    /// <summary>The least altitude when none is given, degrees.</summary>
    public const double DefaultMinAltitudeDeg = 10;

    private static readonly Subject Core = new Subject.GalacticCore();
    private static readonly Subject NoSubject = new Subject.Stars();

    /// <summary>From a name or a direction to a subject.</summary>
    /// <exception cref="BadInputException">Half a direction, or both a name and a direction.</exception>
    public static Subject SubjectOf(string? name, double? rightAscensionDeg, double? declinationDeg) => (name, rightAscensionDeg, declinationDeg) switch
    {
        (null or GalacticCore, null, null) => Core,
        (Stars, null, null) => NoSubject,
        (null, { } ra, { } dec) => new Subject.FixedPoint("", ra % 360, dec),
        (null, _, _) => throw new BadInputException($"{(rightAscensionDeg is null ? "ra" : "dec")} is missing; accepted: ra and dec together"),
        (GalacticCore or Stars, _, _) => throw new BadInputException("subject and ra, dec are both given; accepted: one of them"),
        _ => throw new BadInputException($"subject {name} is not known; accepted: {GalacticCore}, {Stars}, or ra and dec"),
    };

    /// <summary>Computes it.</summary>
    public NightSky Compute() => NightSky.Of(Position, Zone, Night, Subject, MinAltitudeDeg);
}
