using System.Globalization;
using NightWatch.Sky.Band;
using NightWatch.Sky.Eclipses;
using NightWatch.Sky.Meteors;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Words;

// What the sky alone does over a place, night by night.
public sealed partial class English
{
    /// <inheritdoc/>
    public string NoneCell => "-";

    /// <inheritdoc/>
    public string SkyHeading(GeoPosition position, NightSky sky, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sky);
        // Coordinates as the command takes them, so that they can be copied back.
        var place = string.Create(
            CultureInfo.InvariantCulture, $"{position.LatitudeDeg:0.####}, {position.LongitudeDeg:0.####}, {position.ElevationM:0} m");
        return $"Night of {speech.Clock.Date(sky.Night)} at {place} ({sky.Zone.Id})";
    }

    /// <inheritdoc/>
    public string Of(SkyEvent what) => what switch
    {
        SkyEvent.Sunset => "Sunset",
        SkyEvent.CivilDusk => "Civil dusk",
        SkyEvent.NauticalDusk => "Nautical dusk",
        SkyEvent.AstronomicalDusk => "Astronomical dusk",
        SkyEvent.SolarMidnight => "Solar midnight",
        SkyEvent.AstronomicalDawn => "Astronomical dawn",
        SkyEvent.NauticalDawn => "Nautical dawn",
        SkyEvent.CivilDawn => "Civil dawn",
        SkyEvent.Sunrise => "Sunrise",
        SkyEvent.SubjectRise => "Subject rises",
        SkyEvent.SubjectSet => "Subject sets",
        SkyEvent.Moonrise => "Moonrise",
        SkyEvent.Moonset => "Moonset",
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, "Accepted: one of the events."),
    };

    /// <inheritdoc/>
    public string SubjectHighest(double altitudeDeg) => string.Create(Culture, $"Subject highest, {altitudeDeg:0.0}°");

    /// <inheritdoc/>
    public string? Of(SunState sun) => sun switch
    {
        SunState.AlwaysUp => "The Sun does not set.",
        SunState.AlwaysDown => "The Sun does not rise.",
        _ => null,
    };

    /// <inheritdoc/>
    public string? Of(SubjectState subject) => subject switch
    {
        SubjectState.AlwaysUp => "The subject does not set.",
        SubjectState.AlwaysDown => "The subject does not rise.",
        _ => null,
    };

    /// <inheritdoc/>
    public string MoonAtMidnight(MoonEvents moon)
    {
        ArgumentNullException.ThrowIfNull(moon);
        return string.Create(
            Culture,
            $"Moon: {moon.IlluminatedFraction * 100:0} % lit, at solar midnight {moon.AltitudeAtMidnightDeg:0.0}° high in azimuth "
            + $"{moon.AzimuthAtMidnightDeg:0}°.");
    }

    /// <inheritdoc/>
    public string MoonAway(MoonFromEarth moon, MoonPhase next, Speech speech)
    {
        var name = next.Name switch
        {
            PhaseName.New => "new Moon",
            PhaseName.FirstQuarter => "first quarter",
            PhaseName.Full => "full Moon",
            _ => "last quarter",
        };
        return string.Create(
            Culture,
            $"Moon: {moon.DistanceKm:0} km away, {moon.ApparentSize * 100:0} % of its mean size; {name} {speech.Clock.Full(next.At)}.");
    }

    /// <inheritdoc/>
    public string Of(BandArch arch, IReadOnlyList<BandStretch> visible, bool isFirst, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(arch);
        var stance = arch.Stance switch
        {
            BandStance.LowArch => "a low arch",
            BandStance.HighArch => "a high arch",
            _ => "upright",
        };
        var (top, left, right) = (arch.Top.Direction.AzimuthDeg, arch.LeftFoot.Direction.AzimuthDeg, arch.RightFoot.Direction.AzimuthDeg);
        var stretches = visible.Select(stretch => FromTo(speech.Degrees(stretch.FromLongitudeDeg), speech.Degrees(stretch.ToLongitudeDeg)));
        var longitudes = string.Join(", ", stretches);
        return string.Create(
            Culture,
            $"Galactic band at {(isFirst ? "first" : "last")}: {speech.Clock.ZonedTime(arch.At)}, {stance}, top {arch.TopAltitudeDeg:0}° "
            + $"high toward {top:0}°, feet at {left:0}° and {right:0}°, longitudes {longitudes} to be seen.");
    }

    /// <inheritdoc/>
    public string Of(ActiveShower shower)
    {
        ArgumentNullException.ThrowIfNull(shower);
        var peak = shower.PeaksTonight ? ", which is tonight" : "";
        return string.Create(
            Culture,
            $"Meteors: {shower.Shower.Name}, radiant RA {shower.Radiant.RightAscensionDeg:0}°, Dec {shower.Radiant.DeclinationDeg:0}°, "
            + $"up to {shower.Shower.ZenithalHourlyRate:0} an hour at the peak{peak}.");
    }

    /// <inheritdoc/>
    public string Of(EclipseOverSite eclipse, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(eclipse);
        var stage = eclipse.Eclipse.Total is { } total ? $"total {During(total)}"
            : eclipse.Eclipse.Partial is { } partial ? $"partial {During(partial)}"
            : "penumbral, hardly noticed";
        var dark = eclipse.DarkTotality.Count > 0 ? "; the sky is dark then though the Moon is up" : "";
        return $"Eclipse of the Moon: {stage}, greatest at {speech.Clock.ZonedTime(eclipse.Eclipse.Greatest)}{dark}.";

        string During(Interval span) => $"from {speech.Clock.ZonedTime(span.Start)} to {speech.Clock.ZonedTime(span.End)}";
    }

    /// <inheritdoc/>
    public string Of(SkylineCrossing crossing, bool isMoon, Speech speech)
    {
        var passes = crossing.Kind == SkylineCrossingKind.Clears ? "clears" : "sinks behind";
        return string.Create(
            Culture,
            $"{(isMoon ? "Moon" : "Subject")} {passes} the skyline at {speech.Clock.ZonedTime(crossing.At)}, {crossing.AltitudeDeg:0.0}° "
            + $"high in azimuth {crossing.AzimuthDeg:0}°.");
    }

    /// <inheritdoc/>
    public string DarkWindow(Interval? window, Speech speech) => $"Dark: {Window(window, speech)}.";

    /// <inheritdoc/>
    public string SubjectWindow(Interval? window, double leastAltitudeDeg, Speech speech) =>
        $"Subject above {speech.Number(leastAltitudeDeg)}°: {Window(window, speech)}.";

    /// <inheritdoc/>
    public string ShootingWindow(Interval? window, Speech speech) => $"Shooting: {Window(window, speech)}.";

    /// <inheritdoc/>
    public string WindowsCell(IReadOnlyList<Interval> windows, Speech speech) => string.Join(", ", windows.Select(speech.Clock.ZonedTimes));

    /// <inheritdoc/>
    public string Rank(int rank) => $"no. {rank}";

    /// <inheritdoc/>
    public string SeasonEclipse(DarkNight night, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(night);
        var over = night.Eclipse ?? throw new ArgumentException("Accepted: a night with an eclipse.", nameof(night));
        var kind = over.Eclipse.Kind switch { LunarEclipseKind.Total => "total", LunarEclipseKind.Partial => "partial", _ => "penumbral" };
        var dark = over.DarkTotality.Count > 0 ? $"; dark though the Moon is full: {WindowsCell(over.DarkTotality, speech)}" : "";
        return $"{speech.Clock.Date(night.Night)}: {kind} eclipse of the Moon, greatest at "
            + $"{speech.Clock.ZonedTime(over.Eclipse.Greatest)}{dark}.";
    }

    /// <inheritdoc/>
    public string Of(DarkLunation lunation, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(lunation);
        var newMoon = $"New Moon {speech.Clock.Full(lunation.NewMoon)}";
        return lunation.Best is { } run
            ? $"{newMoon}: best from {speech.Clock.Date(run.First)} to {speech.Clock.Date(run.Last)}, {Many(run.Count, "night")}, "
                + $"{speech.Hours(run.Usable)}."
            : $"{newMoon}: no usable night.";
    }

    private static string Window(Interval? window, Speech speech) =>
        window is { } span ? $"{speech.Clock.FullSpan(span)}, {speech.Clock.TableLength(span.Duration)}" : "none";
}
