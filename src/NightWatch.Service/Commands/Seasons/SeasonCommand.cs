using System.CommandLine;
using NightWatch.Service.Commands.SkyNights;
using NightWatch.Service.Wording;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Seasons;

/// <summary>The dark calendar of a place: what the sky allows night by night, no weather.</summary>
internal static class SeasonCommand
{
    public static Command Create(Shell shell)
    {
        var lat = Given.Latitude();
        var lon = Given.Longitude();
        var elevation = Given.Elevation();
        var zone = Given.Zone();
        var from = Given.Date("--from", "Local date of the first evening, YYYY-MM-DD.");
        var nights = Given.Whole("--nights", "How many nights.", 1, 1000);
        var subject = Given.Word("--subject", "What the camera is for; default galactic-core.", SkyRequest.GalacticCore, SkyRequest.Stars);
        var minAltitude = Given.MinAltitude();
        var json = Given.Json();
        var command = new Command("season", "The dark calendar of a place, without weather.") { lat, lon, elevation, zone, from, nights, subject, minAltitude, json };
        command.SetAction(given =>
        {
            var request = new SkyRequest(
                new GeoPosition(given.Needed(lat), given.Needed(lon), given.GetValue(elevation) ?? 0),
                given.Needed(zone),
                given.Needed(from),
                SkyRequest.SubjectOf(given.GetValue(subject), null, null),
                given.GetValue(minAltitude) ?? SkyRequest.DefaultMinAltitudeDeg);
            var skies = Enumerable.Range(0, given.Needed(nights)).AsParallel().AsOrdered().Select(day => (request with { Night = request.Night.PlusDays(day) }).Compute()).ToList();
            if (given.GetValue(json)) Document.Write(shell.Output, DocumentOf(request, skies));
            else Draw(shell, skies);
            return Exit.Ok;
        });
        return command;
    }

    private static SeasonDocument DocumentOf(SkyRequest request, IReadOnlyList<NightSky> skies) => new(
        request.Zone,
        request.Night,
        [
            .. skies.Select(sky => new SeasonNight(
                sky.Night, sky.DarkWindows, sky.SubjectWindows, sky.ShootingWindows, Hours(sky.DarkWindows), Hours(sky.ShootingWindows), Math.Round(sky.Moon.IlluminatedFraction, 6), sky.Moon.Rises, sky.Moon.Sets)),
        ]);

    private static double Hours(IReadOnlyList<Interval> windows) => Math.Round(windows.Sum(window => window.Duration.TotalHours), 4);

    private static void Draw(Shell shell, IReadOnlyList<NightSky> skies) => shell.Draw(console =>
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn("Night").AddColumn("Moon").AddColumn("Dark").AddColumn("Shooting").AddColumn("Hours");
        foreach (var sky in skies)
        {
            table.AddRow(
                LocalText.Date(sky.Night),
                FormattableString.Invariant($"{sky.Moon.IlluminatedFraction * 100:0} %"),
                Times(sky.DarkWindows, sky.Zone),
                Times(sky.ShootingWindows, sky.Zone),
                FormattableString.Invariant($"{Hours(sky.ShootingWindows):0.0}"));
        }

        console.Write(table);
    });

    private static string Times(IReadOnlyList<Interval> windows, DateTimeZone zone) =>
        windows.Count == 0 ? "-" : string.Join(", ", windows.Select(window => $"{LocalText.Time(window.Start, zone)} to {LocalText.Time(window.End, zone)}"));
}

/// <summary>The season document.</summary>
internal sealed record SeasonDocument(DateTimeZone Zone, LocalDate From, IReadOnlyList<SeasonNight> Nights);

/// <summary>One night of it.</summary>
internal sealed record SeasonNight(
    LocalDate Night,
    IReadOnlyList<Interval> DarkWindows,
    IReadOnlyList<Interval> SubjectWindows,
    IReadOnlyList<Interval> ShootingWindows,
    double DarkHours,
    double ShootingHours,
    double MoonIlluminatedFraction,
    IReadOnlyList<Instant> Moonrises,
    IReadOnlyList<Instant> Moonsets);
