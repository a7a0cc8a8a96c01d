using NightWatch.Sky.Subjects;
using NightWatch.Sky.Sun;
using NodaTime;

namespace NightWatch.Sky.Meteors;

/// <summary>A meteor shower of the IAU's list. Its calendar is the Sun's longitude on the ecliptic of J2000.0, degrees.</summary>
/// <param name="IauNumber">Number in the list.</param>
/// <param name="Code">Three letters.</param>
/// <param name="Name">Its name.</param>
/// <param name="BeginDeg">Solar longitude at which meteors begin to be noticed.</param>
/// <param name="PeakDeg">Solar longitude of the maximum.</param>
/// <param name="EndDeg">Solar longitude at which they end.</param>
/// <param name="Radiant">Where the meteors come from, and how that moves.</param>
/// <param name="SpeedKmps">Geocentric speed, km/s: fast meteors are short bright streaks, slow ones long trails.</param>
/// <param name="ZenithalHourlyRate">
/// Meteors an hour at the peak for one observer under a perfect sky with the radiant overhead; a usual year, it varies.
/// </param>
public sealed record MeteorShower(
    int IauNumber,
    string Code,
    string Name,
    double BeginDeg,
    double PeakDeg,
    double EndDeg,
    Radiant Radiant,
    double SpeedKmps,
    double ZenithalHourlyRate)
{
    /// <summary>Whether meteors of the shower can be expected.</summary>
    public bool IsActiveAt(double solarLongitudeDeg) => Turn(solarLongitudeDeg - BeginDeg) <= Turn(EndDeg - BeginDeg);

    /// <summary>The maximum that is nearest to an instant.</summary>
    public Instant PeakNear(Instant at) => SolarLongitude.Reaches(PeakDeg, at);

    /// <summary>The radiant at an instant as a subject for the camera.</summary>
    public Subject SubjectAt(Instant at)
    {
        var (rightAscension, declination) = Radiant.At(SolarLongitude.DegAt(at));
        return new Subject.FixedPoint($"{Name} radiant", rightAscension, declination);
    }

    internal static double Turn(double deg) => deg - 360 * Math.Floor(deg / 360);
}

/// <summary>A radiant that drifts as the Earth goes on.</summary>
/// <param name="RightAscensionDeg">J2000.0 (ICRS), degrees.</param>
/// <param name="DeclinationDeg">J2000.0 (ICRS), degrees.</param>
/// <param name="RightAscensionDrift">Degrees per degree of solar longitude.</param>
/// <param name="DeclinationDrift">Degrees per degree of solar longitude.</param>
/// <param name="SolarLongitudeDeg">When it stands there.</param>
public readonly record struct Radiant(
    double RightAscensionDeg, double DeclinationDeg, double RightAscensionDrift, double DeclinationDrift, double SolarLongitudeDeg)
{
    /// <summary>Where it stands at a solar longitude; J2000.0, degrees.</summary>
    public (double RightAscensionDeg, double DeclinationDeg) At(double solarLongitudeDeg)
    {
        var since = Math.IEEERemainder(solarLongitudeDeg - SolarLongitudeDeg, 360);
        return (MeteorShower.Turn(RightAscensionDeg + RightAscensionDrift * since), DeclinationDeg + DeclinationDrift * since);
    }
}
