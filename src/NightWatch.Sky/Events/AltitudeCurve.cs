using System.Runtime.Intrinsics;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Events;

/// <summary>The curve at one argument: its value, its slope, and the part of its bend that the Earth's turning makes.</summary>
internal readonly record struct CurvePoint(double U, double Value, double Slope, double Bend);

/// <summary>
/// A body over one place: the sine of its topocentric, airless altitude as a function of a fit's argument. The sine is monotone in the
/// altitude, so events need no inverse function until they are told.
/// </summary>
internal readonly ref struct AltitudeCurve
{
    private readonly ReadOnlySpan<Vector256<double>> track;
    private readonly Observer observer;
    private readonly double offset;
    private readonly double limbRadius;

    private AltitudeCurve(ReadOnlySpan<Vector256<double>> track, scoped in Observer observer, double limbRadius)
    {
        this.track = track;
        this.observer = observer;
        this.limbRadius = limbRadius;
        offset = observer.CosLatitude * observer.AxisDistanceKm + observer.SinLatitude * observer.EquatorDistanceKm;
    }

    /// <summary>The centre of a body whose track is in km.</summary>
    public static AltitudeCurve OfCentre(ReadOnlySpan<Vector256<double>> trackKm, scoped in Observer observer) => new(trackKm, observer, 0);

    /// <summary>
    /// The upper limb of a body whose track is in km, raised by the horizon's refraction: the value is positive when the limb is seen
    /// above a level horizon, and is the sine of the centre's altitude plus the sine of semidiameter and refraction.
    /// </summary>
    public static AltitudeCurve OfUpperLimb(ReadOnlySpan<Vector256<double>> trackKm, scoped in Observer observer, double radiusKm) =>
        new(trackKm, observer, radiusKm);

    /// <summary>A direction without parallax.</summary>
    public static AltitudeCurve OfFixed(ReadOnlySpan<Vector256<double>> unitTrack, scoped in Observer observer) =>
        new(unitTrack, observer.WithoutParallax, 0);

    /// <summary>The curve at an argument.</summary>
    public CurvePoint At(double u)
    {
        Polynomial.At(track, u, out var value, out var rate);
        double x = value[0], y = value[1], z = value[2];
        double dx = rate[0], dy = rate[1], dz = rate[2], turning = rate[3];
        var (sin, cos) = Math.SinCos(value[3] + observer.LongitudeRad);

        // Components toward the meridian's point of the equator, and their rates.
        var toMeridian = x * cos + y * sin;
        var toEast = y * cos - x * sin;
        var dToMeridian = dx * cos + dy * sin + turning * toEast;

        var up = observer.CosLatitude * toMeridian + observer.SinLatitude * z - offset;
        var dUp = observer.CosLatitude * dToMeridian + observer.SinLatitude * dz;
        double dm = toMeridian - observer.AxisDistanceKm, dn = z - observer.EquatorDistanceKm;
        var squared = dm * dm + toEast * toEast + dn * dn;
        var dEast = dy * cos - dx * sin - turning * toMeridian;
        var halfDSquared = dm * dToMeridian + toEast * dEast + dn * dz;
        var inverse = 1 / Math.Sqrt(squared);
        var sine = up * inverse;
        var dSine = (dUp - up * halfDSquared * inverse * inverse) * inverse;
        var bend = -turning * turning * observer.CosLatitude * toMeridian * inverse;
        if (limbRadius == 0) return new(u, sine, dSine, bend);

        // sin(refraction + semidiameter), with sin(semidiameter) = radius / distance.
        var sinSemidiameter = limbRadius * inverse;
        var cosSemidiameter = Math.Sqrt(1 - sinSemidiameter * sinSemidiameter);
        var dSemidiameter = -sinSemidiameter * halfDSquared * inverse * inverse / cosSemidiameter;
        var raised = HorizonRefraction.Sin * cosSemidiameter + HorizonRefraction.Cos * sinSemidiameter;
        var dRaised = (HorizonRefraction.Cos * cosSemidiameter - HorizonRefraction.Sin * sinSemidiameter) * dSemidiameter;
        return new(u, sine + raised, dSine + dRaised, bend);
    }

    /// <summary>Hour angle, radians, −π to π or beyond by whole turns, and its rate per unit of the argument.</summary>
    public (double Rad, double Rate) HourAngle(double u)
    {
        Polynomial.At(track, u, out var value, out var rate);
        double x = value[0], y = value[1];
        var squared = x * x + y * y;
        // A direction within an arcsecond of the pole has no hour angle worth the name; it turns with the Earth.
        var dRightAscension = squared > 2e-11 * (squared + value[2] * value[2]) ? (x * rate[1] - y * rate[0]) / squared : 0;
        return (value[3] + observer.LongitudeRad - Math.Atan2(y, x), rate[3] - dRightAscension);
    }

    /// <summary>East, north and up components of the topocentric place, in the track's unit.</summary>
    public Vector3D Local(double u)
    {
        Polynomial.At(track, u, out var value, out _);
        var (sin, cos) = Math.SinCos(value[3] + observer.LongitudeRad);
        var toMeridian = value[0] * cos + value[1] * sin - observer.AxisDistanceKm;
        var toEast = value[1] * cos - value[0] * sin;
        var toPole = value[2] - observer.EquatorDistanceKm;
        return new(
            toEast,
            observer.CosLatitude * toPole - observer.SinLatitude * toMeridian,
            observer.CosLatitude * toMeridian + observer.SinLatitude * toPole);
    }
}
