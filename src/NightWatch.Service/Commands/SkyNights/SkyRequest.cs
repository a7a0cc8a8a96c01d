using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>One site and one night of the sky command.</summary>
internal readonly record struct SkyRequest(
    GeoPosition Position, DateTimeZone Zone, LocalDate Night, Subject Subject, double MinAltitudeDeg, HorizonProfile? Horizon = null)
{
    /// <summary>The least altitude when none is given, degrees.</summary>
    public const double DefaultMinAltitudeDeg = 10;

    /// <summary>Computes it.</summary>
    /// <param name="ephemeris">Shared by all nights of a batch.</param>
    public NightSky Compute(SkyEphemeris? ephemeris = null) =>
        NightSky.Of(Position, Zone, Night, Subject, MinAltitudeDeg, Horizon, ephemeris);
}
