using System.CommandLine;
using System.Text;
using NightWatch.Letters.Calendar;
using NightWatch.Pictures;
using NightWatch.Planning.Season;
using NightWatch.Planning.Watches;
using NightWatch.Service.Commands.SkyNights;
using NightWatch.Service.Terminal;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Seasons;

/// <summary>The dark calendar of a place: what the sky allows night by night, no weather.</summary>
internal static class SeasonCommand
{
    public static Command Create(Shell shell)
    {
        var lat = Given.Latitude().Required();
        var lon = Given.Longitude().Required();
        var elevation = Given.Elevation();
        var zone = Given.Zone().Required();
        var from = Given.Date("--from", "Local date of the first evening, YYYY-MM-DD.").Required();
        var nights = Given.Whole("--nights", "How many nights.", 1, DarkCalendar.MostNights).Required();
        var subject = Given.Subject();
        var ra = Given.RightAscension();
        var dec = Given.Declination();
        var minAltitude = Given.MinAltitude();
        var horizon = Given.Horizon();
        var measured = Given.Number(
            "--sky", "Zenith brightness measured there on a clear moonless night, V mag/arcsec²; default: by the towns around.", 14, 22.5);
        var place = Given.Text("--place", "What the place is called, for the picture and the calendar.");
        var ics = Given.Text("--ics", "Write the best runs as an iCalendar file.", "file");
        var png = Given.Text("--png", "Write the season as a picture, PNG.", "file");
        var svg = Given.Text("--svg", "Write the season as a picture, SVG.", "file");
        var json = Given.Json();
        var command = new Command("season", "The dark calendar of a place, without weather.")
        {
            lat, lon, elevation, zone, from, nights, subject, ra, dec, minAltitude, horizon, measured, place, ics, png, svg, json,
        };
        command.SetAction(given =>
        {
            var position = new GeoPosition(given.Needed(lat), given.Needed(lon), given.GetValue(elevation) ?? 0);
            var target = SubjectNames.SubjectOf(given.GetValue(subject), given.GetValue(ra), given.GetValue(dec), "--");
            var (first, count) = (given.Needed(from), given.Needed(nights));
            if (first.PlusDays(count - 1) > NightSky.LastNight)
                throw new BadInputException(
                    $"--nights: {count} from {first:R} on go beyond {NightSky.LastNight:R}, the last night that the sky is computed for.");
            var watch = new Watch
            {
                Id = "season",
                Subscriber = new Subscriber("", ""),
                Site = new Site
                {
                    Id = "season",
                    Name = "",
                    Position = position,
                    Zone = given.Needed(zone),
                    Horizon = shell.ReadHorizon(given.GetValue(horizon)) ?? HorizonProfile.Level,
                    MeasuredSkyBrightness = given.GetValue(measured),
                },
                Subject = target,
                Limits = new Limits { MinAltitudeDeg = given.GetValue(minAltitude) ?? SkyRequest.DefaultMinAltitudeDeg },
            };
            var calendar = WatchSeason.Of(watch, first, count);
            var name =
                given.GetValue(place) ?? FormattableString.Invariant($"{position.LatitudeDeg:0.####}, {position.LongitudeDeg:0.####}");
            var speech = Speech.Metric(given.Needed(zone));
            var title = speech.Language.SeasonTitle(name, target);
            if (given.GetValue(ics) is { } icsPath)
                shell.WriteFile(
                    icsPath,
                    "--ics",
                    Encoding.UTF8.GetBytes(SeasonCalendar.Text(calendar, position, name, shell.Clock.GetCurrentInstant())));
            if (given.GetValue(png) is { } pngPath) shell.WriteFile(pngPath, "--png", SeasonChart.Png(calendar, title, speech));
            if (given.GetValue(svg) is { } svgPath)
                shell.WriteFile(svgPath, "--svg", Encoding.UTF8.GetBytes(SeasonChart.Svg(calendar, title, speech)));
            if (given.GetValue(json)) Document.Write(shell.Output, SeasonDocument.Of(calendar));
            else
                SeasonTable.Draw(shell, title, calendar);
            return Exit.Ok;
        });
        return command;
    }
}
