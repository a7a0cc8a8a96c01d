using System.CommandLine;
using NightWatch.Planning.Watches;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Archives;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;

namespace NightWatch.Service.Commands.Archives;

/// <summary>
/// Keeps what the feeds say for the saved sites, so that an installation grows an archive of its own for <c>verify-archive</c>.
/// </summary>
internal static class FeedCommand
{
    private const int UsualMonths = 24;

    public static Command Create(Shell shell, Option<string?> config) => new("feed", "The weather feeds.") { Record(shell, config) };

    private static Command Record(Shell shell, Option<string?> config)
    {
        var folder = Given.Text("--out", "Folder of the archives, two files for each place and feed; default: archive.");
        var months = Given.Whole("--keep-months", "Forecasts older than so many months go; default 24.", 1, 240);
        var command = new Command(
            "record",
            "Asks every feed once for every saved site and adds the answer to its archive, with the hours that came; for a timer, every " +
            "three to six hours. 'verify-archive' reads the files. They tell where the sites are, and hold no key and no address.")
        {
            folder, months,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var settings = AllSettings.ReadValid(shell.Directory, given.GetValue(config));
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                var sites = (await store.Watches.ListAsync(stop)).DistinctBy(CellOf).ToList();
                if (sites.Count == 0)
                    throw new BadInputException(
                        "There is no watch yet, so there is no place to ask for; 'nightwatch watch add FILE' saves one.");
                await using var parts = LiveFeeds.Of(settings.Feeds.ToWeather(), shell.Clock).BuildServiceProvider();
                IForecastFeed[] feeds = [.. parts.GetServices<IForecastFeed>()];
                var to = Directory.CreateDirectory(shell.PathOf(given.GetValue(folder) ?? "archive")).FullName;
                var keep = given.GetValue(months) ?? UsualMonths;
                var kept = 0;
                foreach (var watch in sites)
                {
                    foreach (var feed in feeds)
                    {
                        var answer = await feed.FetchAsync(CellOf(watch).Place, null, stop);
                        if (answer is Fetched.Fresh fresh)
                        {
                            var file = new RecordedFeed(to, HeaderOf(watch, feed), watch.Site.Id);
                            shell.Say(
                                FormattableString.Invariant(
                                    $"{watch.Site.Name}, {feed.Id}: {file.Add(fresh.Series, keep)} forecasts in {file.RunsPath}."));
                            kept++;
                        }
                        else
                        {
                            var why = (answer as Fetched.Unavailable)?.Why ?? "The feed had nothing new.";
                            await shell.Error.WriteLineAsync($"nightwatch: {watch.Site.Name}, {feed.Id}: nothing is added. {why}");
                        }
                    }
                }

                return kept > 0 ? Exit.Ok : Exit.Failure;
            });
        return command;
    }

    private static FeedCell CellOf(Watch watch) => FeedCell.Of(NightEvaluation.PlaceOf(watch));

    private static ArchiveHeader HeaderOf(Watch watch, IForecastFeed feed)
    {
        var place = CellOf(watch).Place;
        return new ArchiveHeader(
            watch.Site.Name, place.LatitudeDeg, place.LongitudeDeg, place.ElevationM, watch.Site.Zone.Id, feed.Id,
            $"{feed.Attribution.Text}, {feed.Attribution.Licence}");
    }
}
