using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>Puts a night's figures into instants and states.</summary>
internal readonly struct NightSkyTelling(DayFit fit, Interval span)
{
    public NightSky Tell(DateTimeZone zone, LocalDate night, in NightFigures figures) => new()
    {
        Night = night,
        Zone = zone,
        Span = span,
        Sun = Sun(figures),
        Moon = Moon(figures),
        Subject = Subject(figures),
        DarkWindows = Intervals(figures.Dark),
        SubjectWindows = Intervals(figures.Subject),
        ShootingWindows = Intervals(figures.Shooting),
        AstronomicalNight = Intervals(figures.AstronomicalDay.Within(figures.Start, figures.End)),
        MoonUpWindows = Intervals(figures.MoonUp),
    };

    private SunEvents Sun(in NightFigures f)
    {
        double start = f.Start, end = f.End;
        var set = f.SunUp.FirstEnd(end);
        var rise = f.SunUp.LastStart(start);
        var state = !double.IsNaN(set) || !double.IsNaN(rise) ? SunState.Normal
            : f.SunUp.Count > 0 ? SunState.AlwaysUp
            : SunState.AlwaysDown;
        return new(
            state,
            At(set),
            At(f.CivilDay.FirstEnd(end)),
            At(f.NauticalDay.FirstEnd(end)),
            At(f.AstronomicalDay.FirstEnd(end)),
            At(f.AstronomicalDay.LastStart(start)),
            At(f.NauticalDay.LastStart(start)),
            At(f.CivilDay.LastStart(start)),
            At(rise),
            fit.InstantAt(f.Midnight));
    }

    private MoonEvents Moon(in NightFigures f)
    {
        List<Instant> rises = [], sets = [];
        for (var i = 0; i < f.MoonUp.Count; i++)
        {
            if (f.MoonUp[i].Start > f.Start) rises.Add(fit.InstantAt(f.MoonUp[i].Start));
            if (f.MoonUp[i].End < f.End) sets.Add(fit.InstantAt(f.MoonUp[i].End));
        }

        return new(rises, sets, f.IlluminatedFraction, f.MoonAtMidnight.AltitudeDeg, f.MoonAtMidnight.AzimuthDeg);
    }

    private SubjectEvents Subject(in NightFigures f)
    {
        if (!f.HasSubject) return new(SubjectState.None, null, null, null, null);
        var rise = f.SubjectUp.FirstStart(f.Start);
        var set = f.SubjectUp.FirstEnd(f.End);
        var state = !double.IsNaN(rise) || !double.IsNaN(set) ? SubjectState.Normal
            : f.SubjectUp.Count > 0 ? SubjectState.AlwaysUp
            : SubjectState.AlwaysDown;
        return new(
            state, At(rise), At(set), At(f.SubjectTransit), double.IsNaN(f.SubjectTransit) ? null : f.SubjectTransitAltitudeDeg);
    }

    private Instant? At(double u) => double.IsNaN(u) ? null : fit.InstantAt(u);

    private List<Interval> Intervals(in Windows windows)
    {
        var intervals = new List<Interval>(windows.Count);
        for (var i = 0; i < windows.Count; i++) intervals.Add(fit.IntervalOf(windows[i], span));
        return intervals;
    }
}
