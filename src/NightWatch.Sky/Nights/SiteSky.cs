using System.Runtime.Intrinsics;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>Where things stand over one place at any instant of one night: cheap to ask many times.</summary>
public sealed class SiteSky
{
    private readonly Observer observer;
    private readonly SkyEphemeris ephemeris;
    private readonly DayFit fit;

    /// <param name="position">The place.</param>
    /// <param name="span">The instants that will be asked about; outside it the answers are still right, only slower.</param>
    /// <param name="ephemeris">Shared positions of Sun and Moon. Null computes this span's own.</param>
    public SiteSky(GeoPosition position, Interval span, SkyEphemeris? ephemeris = null)
    {
        Position = position;
        Span = span;
        observer = new(position);
        this.ephemeris = ephemeris ?? new SkyEphemeris(4);
        fit = this.ephemeris.For(span.Start);
    }

    /// <summary>The place.</summary>
    public GeoPosition Position { get; }

    /// <summary>The span the fits were made for.</summary>
    public Interval Span { get; }

    /// <summary>The Sun's centre.</summary>
    public Horizontal SunAt(Instant at)
    {
        var day = FitAt(at);
        return Horizontal.Of(AltitudeCurve.OfCentre(day.Sun, observer).Local(day.ArgumentOf(at)));
    }

    /// <summary>The Moon's centre, with what its light depends on.</summary>
    public MoonSighting MoonAt(Instant at)
    {
        var day = FitAt(at);
        return MoonSighting.At(day, observer, day.ArgumentOf(at));
    }

    /// <summary>The subject; null for <see cref="Subject.Stars"/>.</summary>
    public Horizontal? SubjectAt(Subject subject, Instant at) =>
        SubjectDirection.Icrs(subject) is { } icrs ? FixedAt(icrs, at) : null;

    /// <summary>A fixed ICRS direction, apparent place.</summary>
    public Horizontal FixedAt(double rightAscensionDeg, double declinationDeg, Instant at) =>
        FixedAt(Vector3D.FromDegrees(rightAscensionDeg, declinationDeg), at);

    private Horizontal FixedAt(Vector3D icrs, Instant at)
    {
        var day = FitAt(at);
        Span<Vector256<double>> track = stackalloc Vector256<double>[DayFit.FixedTerms];
        day.Fixed(icrs, track);
        return Horizontal.Of(AltitudeCurve.OfFixed(track, observer).Local(day.ArgumentOf(at)));
    }

    private DayFit FitAt(Instant at) => Math.Abs(fit.ArgumentOf(at)) <= 1 ? fit : ephemeris.For(at);
}
