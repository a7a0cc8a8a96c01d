using System.Runtime.Intrinsics;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Ephemeris;

/// <summary>
/// The sky of the whole Earth from 0h UTC of one date until the longest night that begins that date has ended: apparent Sun and Moon,
/// true of date, and the sidereal angle, as polynomials. Immutable; made once, evaluated for every site.
/// </summary>
/// <remarks>
/// The argument u runs from −1 to 1 over 2.2 days around <see cref="Centre"/>. Against the series themselves: Sun within 0.0001″, Moon
/// within 0.001″ (measured, DayFitTests). TT − UTC is that of the centre: a leap second inside the fit would move the Moon 0.5″.
/// </remarks>
internal sealed class DayFit
{
    /// <summary>Half the time covered, days.</summary>
    public const double HalfWidthDays = 1.1;

    private const double CentreOffsetDays = 1.05;
    private const int SunTerms = 5;
    private const int MoonTerms = 10;

    private static readonly double[] SunNodes = Polynomial.Nodes(SunTerms);
    private static readonly double[] MoonNodes = Polynomial.Nodes(MoonTerms);
    private static readonly double[] FixedNodes = [-1, 0, 1];

    private readonly TerrestrialTime centreTt;
    private readonly double centreAngle;
    private readonly Vector256<double>[] sun = new Vector256<double>[SunTerms];
    private readonly Vector256<double>[] moon = new Vector256<double>[MoonTerms];
    private readonly (Rotation OfDate, Vector3D EarthVelocity, double SiderealRad)[] stars;

    /// <param name="unixDay">The UTC date, in days from 1970-01-01.</param>
    public DayFit(int unixDay)
    {
        UnixDay = unixDay;
        Centre = Instant.FromUnixTimeTicks(0) + Duration.FromDays(unixDay + CentreOffsetDays);
        centreTt = TerrestrialTime.Of(Centre);
        centreAngle = EarthRotation.AngleRad(UniversalTime.Of(Centre));

        FitSun();
        FitMoon();
        stars = Array.ConvertAll(FixedNodes, u =>
        {
            var tt = TimeAt(u);
            var nutation = Nutation.At(tt);
            return (EquatorOfDate.FromIcrs(tt, nutation), EarthOrbit.At(tt).Velocity, SiderealAt(u, tt, nutation));
        });
    }

    /// <summary>The UTC date, in days from 1970-01-01.</summary>
    public int UnixDay { get; }

    /// <summary>The middle of the time covered.</summary>
    public Instant Centre { get; }

    /// <summary>The Sun: km, and the apparent sidereal time of Greenwich, radians.</summary>
    public ReadOnlySpan<Vector256<double>> Sun => sun;

    /// <summary>The Moon: km, and the apparent sidereal time of Greenwich, radians.</summary>
    public ReadOnlySpan<Vector256<double>> Moon => moon;

    /// <summary>The Sun's apparent geocentric place of date at an argument, km.</summary>
    public Vector3D SunKm(double u) => Place(sun, u);

    /// <summary>The Moon's apparent geocentric place of date at an argument, km.</summary>
    public Vector3D MoonKm(double u) => Place(moon, u);

    /// <summary>How many terms a fixed direction takes.</summary>
    public static int FixedTerms => FixedNodes.Length;

    /// <summary>A fixed ICRS direction: apparent place, unit length, and the sidereal time.</summary>
    public void Fixed(Vector3D icrs, Span<Vector256<double>> track)
    {
        Span<Vector256<double>> samples = stackalloc Vector256<double>[FixedTerms];
        for (var i = 0; i < samples.Length; i++)
        {
            var place = stars[i].OfDate * Light.Aberrate(icrs, stars[i].EarthVelocity);
            samples[i] = Vector256.Create(place.X, place.Y, place.Z, stars[i].SiderealRad);
        }

        Polynomial.Interpolate(FixedNodes, samples, track);
    }

    /// <summary>The fit's argument at an instant.</summary>
    public double ArgumentOf(Instant at) => (at - Centre).TotalDays / HalfWidthDays;

    /// <summary>The instant of an argument, to the microsecond.</summary>
    public Instant InstantAt(double u) => Centre + Duration.FromTicks(Math.Round(u * HalfWidthDays * 864e8) * 10);

    private static Vector3D Place(ReadOnlySpan<Vector256<double>> track, double u)
    {
        Polynomial.At(track, u, out var value, out _);
        return new(value[0], value[1], value[2]);
    }

    private TerrestrialTime TimeAt(double u) => centreTt.PlusDays(u * HalfWidthDays);

    private void FitSun()
    {
        Span<Vector256<double>> samples = stackalloc Vector256<double>[SunTerms];
        for (var i = 0; i < SunTerms; i++) samples[i] = OfDate(SunNodes[i], ApparentSun.IcrsKm(TimeAt(SunNodes[i])));
        Polynomial.Interpolate(SunNodes, samples, sun);
    }

    // The geometric places are fitted first, so that a place one light-time earlier costs a polynomial and not a second lunar theory.
    private void FitMoon()
    {
        Span<Vector256<double>> samples = stackalloc Vector256<double>[MoonTerms];
        for (var i = 0; i < MoonTerms; i++)
        {
            var (x, y, z) = ApparentMoon.GeometricIcrsKm(TimeAt(MoonNodes[i]));
            samples[i] = Vector256.Create(x, y, z, 0);
        }

        Span<Vector256<double>> geometric = stackalloc Vector256<double>[MoonTerms];
        Polynomial.Interpolate(MoonNodes, samples, geometric);
        for (var i = 0; i < MoonTerms; i++)
        {
            var lightDays = Place(geometric, MoonNodes[i]).Length / Light.KmPerSecond / 86400;
            samples[i] = OfDate(MoonNodes[i], Place(geometric, MoonNodes[i] - lightDays / HalfWidthDays));
        }

        Polynomial.Interpolate(MoonNodes, samples, moon);
    }

    private Vector256<double> OfDate(double u, Vector3D icrs)
    {
        var tt = TimeAt(u);
        var nutation = Nutation.At(tt);
        var place = EquatorOfDate.FromIcrs(tt, nutation) * icrs;
        return Vector256.Create(place.X, place.Y, place.Z, SiderealAt(u, tt, nutation));
    }

    // Not reduced to one turn, so that it has no jump inside the fit.
    private double SiderealAt(double u, TerrestrialTime tt, Nutation nutation) =>
        centreAngle + Math.Tau * EarthRotation.TurnsPerDay * u * HalfWidthDays + EarthRotation.ApparentMinusAngleRad(tt, nutation);
}
