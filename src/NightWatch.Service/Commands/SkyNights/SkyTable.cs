using NightWatch.Service.Terminal;
using NightWatch.Sky.Nights;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>A night for people, in local time.</summary>
internal static class SkyTable
{
    public static void Draw(Shell shell, SkyRequest request, NightSky sky) => shell.Draw(console =>
    {
        var speech = Speech.Metric(sky.Zone);
        var language = speech.Language;
        console.WriteLine(language.SkyHeading(request.Position, sky, speech));
        var table = new Table().Border(TableBorder.Simple).AddColumn("Event").AddColumn("Local time");
        foreach (var (at, name) in Events(sky, language).OrderBy(entry => entry.At)) table.AddRow(name, speech.Clock.Full(at));
        console.Write(table);
        foreach (var note in Notes(sky, language).Concat(SkyNotes.Of(request, sky, speech))) console.WriteLine(note);
        Windows(console, sky.DarkWindows, window => language.DarkWindow(window, speech));
        Windows(console, sky.SubjectWindows, window => language.SubjectWindow(window, request.MinAltitudeDeg, speech));
        Windows(console, sky.ShootingWindows, window => language.ShootingWindow(window, speech));
    });

    private static IEnumerable<(Instant At, string Name)> Events(NightSky sky, ILanguage language)
    {
        (Instant? At, SkyEvent What)[] single =
        [
            (sky.Sun.Set, SkyEvent.Sunset),
            (sky.Sun.CivilDusk, SkyEvent.CivilDusk),
            (sky.Sun.NauticalDusk, SkyEvent.NauticalDusk),
            (sky.Sun.AstronomicalDusk, SkyEvent.AstronomicalDusk),
            (sky.Sun.Midnight, SkyEvent.SolarMidnight),
            (sky.Sun.AstronomicalDawn, SkyEvent.AstronomicalDawn),
            (sky.Sun.NauticalDawn, SkyEvent.NauticalDawn),
            (sky.Sun.CivilDawn, SkyEvent.CivilDawn),
            (sky.Sun.Rise, SkyEvent.Sunrise),
            (sky.Subject.Rise, SkyEvent.SubjectRise),
            (sky.Subject.Set, SkyEvent.SubjectSet),
        ];
        foreach (
            var (at, what) in single
                .Concat(sky.Moon.Rises.Select(at => ((Instant?)at, SkyEvent.Moonrise)))
                .Concat(sky.Moon.Sets.Select(at => ((Instant?)at, SkyEvent.Moonset))))
        {
            if (at is { } instant) yield return (instant, language.Of(what));
        }

        if (sky.Subject is { Transit: { } transit, TransitAltitudeDeg: { } altitude })
            yield return (transit, language.SubjectHighest(altitude));
    }

    private static IEnumerable<string> Notes(NightSky sky, ILanguage language)
    {
        if (language.Of(sky.Sun.State) is { } sun) yield return sun;
        if (language.Of(sky.Subject.State) is { } subject) yield return subject;
        yield return language.MoonAtMidnight(sky.Moon);
    }

    private static void Windows(IAnsiConsole console, IReadOnlyList<Interval> windows, Func<Interval?, string> say)
    {
        if (windows.Count == 0) console.WriteLine(say(null));
        foreach (var window in windows) console.WriteLine(say(window));
    }
}
