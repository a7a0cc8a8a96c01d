using System.Globalization;
using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using NightWatch.Pictures;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Road;
using NightWatch.Planning.Watches;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NightWatch.Words.Documents;
using NodaTime;

namespace NightWatch.Service.Commands.Plans;

/// <summary>The whole evaluation of one watch and one night from a stored answer of a feed.</summary>
internal static class PlanCommand
{
    /// <summary>Coarse global grids have cells of this size.</summary>
    private const double MostKmFromSite = 50;

    private const int MeasuredHours = 72;

    public static Command Create(Shell shell)
    {
        var watch = Given.Text("--watch", "A watch file.", "file").Required();
        var night = Given.Date("--night", "Local date of the evening, YYYY-MM-DD.").Required();
        var forecast = Given.Text("--forecast", "A stored answer of the feed.", "file").Required();
        var feed = Given.Word("--feed", "Whose answer it is.", [.. ForecastReaders.All.Select(reader => reader.FeedId)]).Required();
        var members = Given.Text("--members", "A stored answer of the feed's ensemble, for the probability.", "file");
        var second = Given.Text("--second", "A stored answer of another feed, for a second opinion.", "file");
        var secondFeed = Given.Word(
            "--second-feed",
            "Whose answer the second is; required with --second.",
            [.. ForecastReaders.All.Select(reader => reader.FeedId)]);
        var now = Given.Instant("--now", "The clock reading to plan at, UTC; default now.");
        var fetched = Given.Instant("--fetched", "When the answers were fetched, UTC; default the clock reading.");
        var rain = Given.Number(
            "--rain-before",
            "Rain of the last 72 hours at the site as you measured it, mm; default: what the answer says of them.",
            0,
            2000);
        var png = Given.Text("--frame-png", "Write the subject's path across the frame as a picture, PNG.", "file");
        var svg = Given.Text("--frame-svg", "Write the subject's path across the frame as a picture, SVG.", "file");
        var json = Given.Json();
        var command = new Command("plan", "Verdict, reasons, windows, sequence and timeline of one watch and one night.")
        {
            watch, night, forecast, feed, members, second, secondFeed, now, fetched, rain, png, svg, json,
        };
        command.SetAction(given =>
        {
            var at = given.GetValue(now) ?? shell.Clock.GetCurrentInstant();
            var fetchedAt = given.GetValue(fetched) ?? at;
            if (fetchedAt > at) throw new BadInputException("--fetched is after the clock reading; accepted: an instant before --now.");
            var order = WatchCommand.ReadFile(shell, given.Needed(watch), "--watch");
            var series = Read(shell, "--forecast", given.Needed(forecast), given.Needed(feed), fetchedAt);
            WarnIfElsewhere(shell, series, order.Site);
            var weather = new PlaceWeather
            {
                Newest = series,
                Members = given.GetValue(members) is { } file ? ReadMembers(shell, file, series.FeedId, fetchedAt) : [],
                SecondOpinion = given.GetValue(second) is { } other
                    ? Read(shell, "--second", other, given.Needed(secondFeed), fetchedAt)
                    : null,
            };
            var sky = new SharedSky();
            var measured = given.GetValue(rain) is { } mm ? new RainBefore(mm, MeasuredHours, MeasuredHours) : (RainBefore?)null;
            var plan = NightEvaluation.Of(order, given.Needed(night), weather, ChanceBook.Shipped, at, sky, measured).Plan;
            var later = LaterNights.Of(plan, weather, at, sky, measured);
            WritePictures(shell, plan, given.GetValue(png), given.GetValue(svg));
            if (given.GetValue(json)) Document.Write(shell.Output, PlanDocument.Of(plan, later));
            else PlanTable.Draw(shell, plan, later);
            return Exit.Ok;
        });
        return command;
    }

    private static void WritePictures(Shell shell, NightPlan plan, string? png, string? svg)
    {
        if (png is null && svg is null) return;
        if (FrameChart.Png(plan) is not { } pixels || FrameChart.Svg(plan) is not { } lines)
        {
            shell.Error.WriteLine("nightwatch: warning: no picture of the frame: there is no run, or the subject is the stars at large.");
            return;
        }

        if (png is not null) shell.WriteFile(png, "--frame-png", pixels);
        if (svg is not null) shell.WriteFile(svg, "--frame-svg", Encoding.UTF8.GetBytes(lines));
    }

    /// <summary>A forecast for another place still plans, since one may want to see just that; but not unsaid.</summary>
    private static void WarnIfElsewhere(Shell shell, ForecastSeries series, Site site)
    {
        var km = RoadDistance.GreatCircleKm(new GeoPosition(series.Cell.LatitudeDeg, series.Cell.LongitudeDeg), site.Position);
        if (km > MostKmFromSite)
        {
            shell.Error.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"nightwatch: warning: --forecast is for {series.Cell.LatitudeDeg:0.##}, {series.Cell.LongitudeDeg:0.##}, {km:0} km " +
                    $"from {site.Name}."));
        }
    }

    private static ForecastSeries Read(Shell shell, string option, string path, string feed, Instant at)
    {
        try
        {
            return ForecastReaders.For(feed).Read(shell.ReadFile(path, option), at);
        }
        catch (ForecastFormatException broken)
        {
            throw new BadInputException($"{option}: '{path}' is not an answer of {feed}: {broken.Message}");
        }
    }

    /// <summary>Only one public feed here has members; the invented one has its own.</summary>
    private static ImmutableArray<ForecastSeries> ReadMembers(Shell shell, string path, string feed, Instant at)
    {
        var ensemble = ForecastReaders.Ensembles.FirstOrDefault(reader => reader.FeedId == feed)?.FeedId ?? "open-meteo-ensemble";
        try
        {
            return ForecastReaders.ForEnsemble(ensemble).ReadMembers(shell.ReadFile(path, "--members"), at);
        }
        catch (ForecastFormatException broken)
        {
            throw new BadInputException($"--members: '{path}' is not an answer of {ensemble}: {broken.Message}");
        }
    }
}
