using System.Runtime.Intrinsics;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Nights;

/// <summary>
/// One night over one place in plain numbers, as arguments of a <see cref="DayFit"/>; NaN for an event that does not happen.
/// <see cref="NightSky"/> is told from it; work on very many nights stays with it, since it allocates nothing.
/// </summary>
internal struct NightFigures
{
    public double Start, End;
    public Windows SunUp, CivilDay, NauticalDay, AstronomicalDay;
    public Windows MoonUp, Dark, SubjectUp, Subject, Shooting;
    public double Midnight, SubjectTransit, SubjectTransitAltitudeDeg;
    public Horizontal MoonAtMidnight;
    public double IlluminatedFraction;
    public bool HasSubject;

    private static readonly double SunsetSine = Math.Sin(-50 * Angles.Arcminute);
    private static readonly double CivilSine = Math.Sin(-6 * Angles.Degree);
    private static readonly double NauticalSine = Math.Sin(-12 * Angles.Degree);
    private static readonly double AstronomicalSine = Math.Sin(-18 * Angles.Degree);

    /// <summary>Computes a night.</summary>
    /// <param name="fit">Made for the UTC date on which the span begins.</param>
    /// <param name="observer">The place.</param>
    /// <param name="start">Of the span, as an argument of the fit.</param>
    /// <param name="end">Of the span, as an argument of the fit.</param>
    /// <param name="subject">ICRS direction, unit length; null for none.</param>
    /// <param name="minAltitudeDeg">Least geometric altitude of the subject.</param>
    /// <param name="night">The answer.</param>
    public static void Compute(
        DayFit fit, in Observer observer, double start, double end, Vector3D? subject, double minAltitudeDeg, out NightFigures night)
    {
        night = new() { Start = start, End = end, HasSubject = subject is not null };
        Span<CurvePoint> room = stackalloc CurvePoint[MonotoneArcs.MaxKnots];

        var sun = AltitudeCurve.OfCentre(fit.Sun, observer);
        var knots = room[..MonotoneArcs.Divide(sun, start, end, room)];
        night.SunUp = Windows.Above(sun, knots, SunsetSine);
        night.CivilDay = Windows.Above(sun, knots, CivilSine);
        night.NauticalDay = Windows.Above(sun, knots, NauticalSine);
        night.AstronomicalDay = Windows.Above(sun, knots, AstronomicalSine);
        night.Midnight = Meridian.First(sun, start, end, Math.PI);
        // Two anti-transits are some seconds more than 24 h apart for half of the year, so a span may hold none.
        if (double.IsNaN(night.Midnight)) night.Midnight = Meridian.Nearest(sun, (start + end) / 2, Math.PI);

        var limb = AltitudeCurve.OfUpperLimb(fit.Moon, observer, ApparentMoon.RadiusKm);
        knots = room[..MonotoneArcs.Divide(limb, start, end, room)];
        night.MoonUp = Windows.Above(limb, knots, 0);
        night.Dark = night.AstronomicalDay.Within(start, end).And(night.MoonUp.Within(start, end));
        var sighting = MoonSighting.At(fit, observer, night.Midnight);
        night.MoonAtMidnight = sighting.Direction;
        night.IlluminatedFraction = sighting.IlluminatedFraction;

        night.SubjectTransit = night.SubjectTransitAltitudeDeg = double.NaN;
        if (subject is { } direction)
        {
            Span<Vector256<double>> track = stackalloc Vector256<double>[DayFit.FixedTerms];
            fit.Fixed(direction, track);
            var curve = AltitudeCurve.OfFixed(track, observer);
            knots = room[..MonotoneArcs.Divide(curve, start, end, room)];
            night.SubjectUp = Windows.Above(curve, knots, 0);
            night.Subject = Windows.Above(curve, knots, Math.Sin(minAltitudeDeg * Angles.Degree));
            night.SubjectTransit = Meridian.First(curve, start, end, 0);
            if (!double.IsNaN(night.SubjectTransit))
                night.SubjectTransitAltitudeDeg = Horizontal.Of(curve.Local(night.SubjectTransit)).AltitudeDeg;
        }
        else
        {
            night.Subject = Windows.Of(start, end);
        }

        night.Shooting = night.Dark.And(night.Subject);
    }
}
