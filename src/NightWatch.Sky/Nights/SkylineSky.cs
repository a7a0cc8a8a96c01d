using System.Runtime.Intrinsics;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>Which way something passes the skyline.</summary>
public enum SkylineCrossingKind
{
    /// <summary>It comes out from behind the skyline.</summary>
    Clears,

    /// <summary>It goes behind the skyline.</summary>
    Sinks,
}

/// <summary>Something passes the skyline of a site.</summary>
/// <param name="At">The instant of it.</param>
/// <param name="Kind">Which way.</param>
/// <param name="AltitudeDeg">Altitude of the skyline there, degrees.</param>
/// <param name="AzimuthDeg">Where, degrees.</param>
public readonly record struct SkylineCrossing(Instant At, SkylineCrossingKind Kind, double AltitudeDeg, double AzimuthDeg);

/// <summary>
/// A night against a site's skyline: when subject and Moon clear it and sink behind it, and how dark the ridge makes the night.
/// </summary>
/// <remarks>
/// The subject by its geometric altitude, as in <see cref="NightSky.SubjectWindows"/>. The Moon by its upper limb as it is seen, with
/// refraction: over a level skyline that is the almanac's rising and setting.
/// </remarks>
public sealed record SkylineSky
{
    /// <summary>The subject's crossings, in order; none for <see cref="Subject.Stars"/>.</summary>
    public required IReadOnlyList<SkylineCrossing> Subject { get; init; }

    /// <summary>When the subject stands above the skyline; the whole span for <see cref="Subject.Stars"/>.</summary>
    public required IReadOnlyList<Interval> SubjectClear { get; init; }

    /// <summary>The Moon's crossings, in order.</summary>
    public required IReadOnlyList<SkylineCrossing> Moon { get; init; }

    /// <summary>When any of the Moon stands above the skyline.</summary>
    public required IReadOnlyList<Interval> MoonClear { get; init; }

    /// <summary>
    /// Sun below −18° and the Moon behind the skyline: where no moonlight falls on the camera, though the sky overhead may be lit.
    /// </summary>
    public required IReadOnlyList<Interval> DarkWindows { get; init; }

    /// <summary>Sets a night against a skyline.</summary>
    /// <param name="position">The place the night was computed for.</param>
    /// <param name="night">The night.</param>
    /// <param name="subject">What the camera is for.</param>
    /// <param name="horizon">The skyline.</param>
    /// <param name="ephemeris">Shared positions; null computes this night's own.</param>
    public static SkylineSky Of(
        GeoPosition position, NightSky night, Subject subject, HorizonProfile horizon, SkyEphemeris? ephemeris = null)
    {
        var fit = (ephemeris ?? new SkyEphemeris(1)).For(night.Span.Start);
        var observer = new Observer(position);
        double start = fit.ArgumentOf(night.Span.Start), end = fit.ArgumentOf(night.Span.End);

        var moonCurve = AltitudeCurve.OfCentre(fit.Moon, observer);
        var moon = SkylineScan.Clear(new MoonMargin(moonCurve, horizon), start, end);
        var moonClear = fit.IntervalsOf(moon, night.Span);

        List<Window> clear = [new(start, end)];
        IReadOnlyList<SkylineCrossing> crossings = [];
        if (SubjectDirection.Icrs(subject) is { } icrs)
        {
            Span<Vector256<double>> track = stackalloc Vector256<double>[DayFit.FixedTerms];
            fit.Fixed(icrs, track);
            var curve = AltitudeCurve.OfFixed(track, observer);
            clear = SkylineScan.Clear(new FixedMargin(curve, horizon), start, end);
            crossings = Crossings(fit, curve, horizon, clear, start, end);
        }

        return new()
        {
            Subject = crossings,
            SubjectClear = fit.IntervalsOf(clear, night.Span),
            Moon = Crossings(fit, moonCurve, horizon, moon, start, end),
            MoonClear = moonClear,
            DarkWindows = night.AstronomicalNight.And(moonClear.Within(night.Span)),
        };
    }

    /// <summary>The parts of windows in which a fixed direction also clears the skyline.</summary>
    internal static IReadOnlyList<Interval> Clearing(
        DayFit fit, in Observer observer, Vector3D icrs, in Windows within, Interval span, HorizonProfile horizon)
    {
        Span<Vector256<double>> track = stackalloc Vector256<double>[DayFit.FixedTerms];
        fit.Fixed(icrs, track);
        var margin = new FixedMargin(AltitudeCurve.OfFixed(track, observer), horizon);
        var clear = new List<Window>();
        for (var i = 0; i < within.Count; i++) clear.AddRange(SkylineScan.Clear(margin, within[i].Start, within[i].End));
        return fit.IntervalsOf(clear, span);
    }

    private static List<SkylineCrossing> Crossings(
        DayFit fit, in AltitudeCurve curve, HorizonProfile horizon, List<Window> clear, double start, double end)
    {
        var crossings = new List<SkylineCrossing>();
        foreach (var window in clear)
        {
            if (window.Start > start) crossings.Add(Crossing(fit, curve, horizon, window.Start, SkylineCrossingKind.Clears));
            if (window.End < end) crossings.Add(Crossing(fit, curve, horizon, window.End, SkylineCrossingKind.Sinks));
        }

        return crossings;
    }

    private static SkylineCrossing Crossing(DayFit fit, in AltitudeCurve curve, HorizonProfile horizon, double u, SkylineCrossingKind kind)
    {
        var azimuth = Horizontal.Of(curve.Local(u)).AzimuthDeg;
        return new(fit.InstantAt(u), kind, horizon.AltitudeDegAt(azimuth), azimuth);
    }
}
