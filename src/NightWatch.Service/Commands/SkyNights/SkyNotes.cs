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
    public static IEnumerable<string> Of(SkyRequest request, NightSky sky, Speech speech)
    {
        var language = speech.Language;
        yield return language.MoonAway(
            MoonFromEarth.At(sky.Sun.Midnight), MoonPhases.Between(sky.Sun.Midnight, sky.Sun.Midnight + Duration.FromDays(9))[0], speech);
        foreach (var note in Band(request, sky, speech)) yield return note;
        foreach (var active in MeteorShowers.ActiveOn(sky.Zone, sky.Night)) yield return language.Of(active);
        if (EclipseOverSite.During(sky) is { } over) yield return language.Of(over, speech);
        if (request.Horizon is { } horizon)
        {
            var skyline = SkylineSky.Of(request.Position, sky, request.Subject, horizon);
            foreach (var crossing in skyline.Subject) yield return language.Of(crossing, isMoon: false, speech);
            foreach (var crossing in skyline.Moon) yield return language.Of(crossing, isMoon: true, speech);
        }
    }

    private static IEnumerable<string> Band(SkyRequest request, NightSky sky, Speech speech)
    {
        var windows = sky.ShootingWindows.Count > 0 ? sky.ShootingWindows : sky.AstronomicalNight;
        if (windows.Count == 0) yield break;
        var arches = BandTrack.Over(request.Position, windows.MaxBy(window => window.Duration), Duration.FromMinutes(10)).Arches;
        var horizon = request.Horizon ?? HorizonProfile.Level;
        yield return speech.Language.Of(arches[0], arches[0].VisibleOver(horizon), isFirst: true, speech);
        yield return speech.Language.Of(arches[^1], arches[^1].VisibleOver(horizon), isFirst: false, speech);
    }
}
