using NightWatch.Sky.Band;
using NightWatch.Sky.Meteors;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>What else there is to say of a night: the band's arch, meteors, an eclipse, the skyline.</summary>
internal static class SkyNotes
{
    public static IEnumerable<string> Of(SkyRequest request, NightSky sky)
    {
        yield return Moon(sky);
        foreach (var note in Band(request, sky)) yield return note;
        foreach (var active in MeteorShowers.ActiveOn(sky.Zone, sky.Night)) yield return Meteors(active);
        if (EclipseOverSite.During(sky) is { } over) yield return Eclipse(over, sky.Zone);
        if (request.Horizon is { } horizon)
        {
            var skyline = SkylineSky.Of(request.Position, sky, request.Subject, horizon);
            foreach (var crossing in skyline.Subject) yield return Crossing("Subject", crossing, sky.Zone);
            foreach (var crossing in skyline.Moon) yield return Crossing("Moon", crossing, sky.Zone);
        }
    }

    private static string Moon(NightSky sky)
    {
        var moon = MoonFromEarth.At(sky.Sun.Midnight);
        var next = MoonPhases.Between(sky.Sun.Midnight, sky.Sun.Midnight + Duration.FromDays(9))[0];
        var name = next.Name switch
        {
            PhaseName.New => "new Moon",
            PhaseName.FirstQuarter => "first quarter",
            PhaseName.Full => "full Moon",
            _ => "last quarter",
        };
        return FormattableString.Invariant(
            $"Moon: {moon.DistanceKm:0} km away, {moon.ApparentSize * 100:0} % of its mean size; {name} {LocalText.DayTime(next.At, sky.Zone)}.");
    }

    private static IEnumerable<string> Band(SkyRequest request, NightSky sky)
    {
        var windows = sky.ShootingWindows.Count > 0 ? sky.ShootingWindows : sky.AstronomicalNight;
        if (windows.Count == 0) yield break;
        var track = BandTrack.Over(request.Position, windows.MaxBy(window => window.Duration), Duration.FromMinutes(10));
        var horizon = request.Horizon ?? HorizonProfile.Level;
        yield return "Galactic band at first: " + Arch(track.Arches[0], horizon, sky.Zone);
        yield return "Galactic band at last: " + Arch(track.Arches[^1], horizon, sky.Zone);
    }

    private static string Arch(BandArch arch, HorizonProfile horizon, DateTimeZone zone)
    {
        var stretches = arch.VisibleOver(horizon).Select(stretch => FormattableString.Invariant($"{stretch.FromLongitudeDeg:0}° to {stretch.ToLongitudeDeg:0}°"));
        return FormattableString.Invariant(
            $"{LocalText.Time(arch.At, zone)}, {StanceOf(arch.Stance)}, top {arch.TopAltitudeDeg:0}° high toward {arch.Top.Direction.AzimuthDeg:0}°, feet at {arch.LeftFoot.Direction.AzimuthDeg:0}° and {arch.RightFoot.Direction.AzimuthDeg:0}°, longitudes {string.Join(", ", stretches)} to be seen.");
    }

    private static string StanceOf(BandStance stance) => stance switch
    {
        BandStance.LowArch => "a low arch",
        BandStance.HighArch => "a high arch",
        _ => "upright",
    };

    private static string Meteors(ActiveShower active) => FormattableString.Invariant(
        $"Meteors: {active.Shower.Name}, radiant RA {active.Radiant.RightAscensionDeg:0}°, Dec {active.Radiant.DeclinationDeg:0}°, up to {active.Shower.ZenithalHourlyRate:0} an hour at the peak{(active.PeaksTonight ? ", which is tonight" : "")}.");

    private static string Eclipse(EclipseOverSite over, DateTimeZone zone)
    {
        var eclipse = over.Eclipse;
        var stage = eclipse.Total is { } total ? $"total from {LocalText.Time(total.Start, zone)} to {LocalText.Time(total.End, zone)}"
            : eclipse.Partial is { } partial ? $"partial from {LocalText.Time(partial.Start, zone)} to {LocalText.Time(partial.End, zone)}"
            : "penumbral, hardly noticed";
        var dark = over.DarkTotality.Count > 0 ? "; the sky is dark then though the Moon is up" : "";
        return $"Eclipse of the Moon: {stage}, greatest at {LocalText.Time(eclipse.Greatest, zone)}{dark}.";
    }

    private static string Crossing(string what, SkylineCrossing crossing, DateTimeZone zone) => FormattableString.Invariant(
        $"{what} {(crossing.Kind == SkylineCrossingKind.Clears ? "clears" : "sinks behind")} the skyline at {LocalText.Time(crossing.At, zone)}, {crossing.AltitudeDeg:0.0}° high in azimuth {crossing.AzimuthDeg:0}°.");
}
