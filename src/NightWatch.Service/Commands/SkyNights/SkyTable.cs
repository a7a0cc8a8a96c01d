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
        var zone = sky.Zone;
        console.WriteLine(FormattableString.Invariant($"Night of {LocalText.Date(sky.Night)} at {request.Position.LatitudeDeg:0.####}, {request.Position.LongitudeDeg:0.####}, {request.Position.ElevationM:0} m ({zone.Id})"));
        var table = new Table().Border(TableBorder.Simple).AddColumn("Event").AddColumn("Local time");
        foreach (var (at, name) in Events(sky).OrderBy(entry => entry.At)) table.AddRow(name, LocalText.DayTime(at, zone));
        console.Write(table);
        foreach (var note in Notes(sky).Concat(SkyNotes.Of(request, sky))) console.WriteLine(note);
        Windows(console, "Dark", sky.DarkWindows, zone);
        Windows(console, "Subject above " + FormattableString.Invariant($"{request.MinAltitudeDeg:0.#}°"), sky.SubjectWindows, zone);
        Windows(console, "Shooting", sky.ShootingWindows, zone);
    });

    private static IEnumerable<(Instant At, string Name)> Events(NightSky sky)
    {
        (Instant? At, string Name)[] single =
        [
            (sky.Sun.Set, "Sunset"),
            (sky.Sun.CivilDusk, "Civil dusk"),
            (sky.Sun.NauticalDusk, "Nautical dusk"),
            (sky.Sun.AstronomicalDusk, "Astronomical dusk"),
            (sky.Sun.Midnight, "Solar midnight"),
            (sky.Sun.AstronomicalDawn, "Astronomical dawn"),
            (sky.Sun.NauticalDawn, "Nautical dawn"),
            (sky.Sun.CivilDawn, "Civil dawn"),
            (sky.Sun.Rise, "Sunrise"),
            (sky.Subject.Rise, "Subject rises"),
            (sky.Subject.Transit, FormattableString.Invariant($"Subject highest, {sky.Subject.TransitAltitudeDeg:0.0}°")),
            (sky.Subject.Set, "Subject sets"),
        ];
        return single.Where(entry => entry.At is not null).Select(entry => (entry.At!.Value, entry.Name))
            .Concat(sky.Moon.Rises.Select(at => (at, "Moonrise")))
            .Concat(sky.Moon.Sets.Select(at => (at, "Moonset")));
    }

    private static IEnumerable<string> Notes(NightSky sky)
    {
        if (sky.Sun.State == SunState.AlwaysUp) yield return "The Sun does not set.";
        if (sky.Sun.State == SunState.AlwaysDown) yield return "The Sun does not rise.";
        if (sky.Subject.State == SubjectState.AlwaysUp) yield return "The subject does not set.";
        if (sky.Subject.State == SubjectState.AlwaysDown) yield return "The subject does not rise.";
        yield return FormattableString.Invariant(
            $"Moon: {sky.Moon.IlluminatedFraction * 100:0} % lit, at solar midnight {sky.Moon.AltitudeAtMidnightDeg:0.0}° high in azimuth {sky.Moon.AzimuthAtMidnightDeg:0}°.");
    }

    private static void Windows(IAnsiConsole console, string name, IReadOnlyList<Interval> windows, DateTimeZone zone)
    {
        if (windows.Count == 0) console.WriteLine($"{name}: none.");
        foreach (var window in windows) console.WriteLine($"{name}: {LocalText.Span(window, zone)}, {LocalText.Length(window.Duration)}.");
    }
}
