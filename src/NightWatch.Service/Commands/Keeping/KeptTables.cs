using NightWatch.Planning.Watches;
using NightWatch.Service.Terminal;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Keeping;

/// <summary>Sites and watches for people.</summary>
internal static class KeptTables
{
    public static void Watches(Shell shell, IReadOnlyList<Watch> watches, Instant now) => shell.Draw(console =>
    {
        if (watches.Count == 0)
        {
            console.WriteLine("No watch is kept yet. 'watch example > watch.json', edit it, 'watch add watch.json'.");
            return;
        }

        var table = new Table()
            .Border(TableBorder.Simple)
            .AddColumn("Watch")
            .AddColumn("Site")
            .AddColumn("Subject")
            .AddColumn("Written to")
            .AddColumn("State");
        foreach (var watch in watches)
        {
            table.AddRow(
                new Text(watch.Id),
                new Text(watch.Site.Name),
                new Text(Speech.To(watch).Language.Of(watch.Subject)),
                new Text(watch.Subscriber.Address),
                new Text(State(watch, now)));
        }

        console.Write(table);
    });

    public static void Sites(Shell shell, IReadOnlyList<Site> sites) =>
        shell.Draw(console =>
        {
            if (sites.Count == 0)
            {
                console.WriteLine("No site is kept yet; adding a watch keeps its site too.");
                return;
            }

            var table = new Table()
                .Border(TableBorder.Simple)
                .AddColumn("Site")
                .AddColumn("Name")
                .AddColumn("Latitude")
                .AddColumn("Longitude")
                .AddColumn("Elevation")
                .AddColumn("Zone");
            foreach (var site in sites)
            {
                table.AddRow(
                    new Text(site.Id),
                    new Text(site.Name),
                    new Text(FormattableString.Invariant($"{site.Position.LatitudeDeg:0.0000}°")),
                    new Text(FormattableString.Invariant($"{site.Position.LongitudeDeg:0.0000}°")),
                    new Text(FormattableString.Invariant($"{site.Position.ElevationM:0} m")),
                    new Text(site.Zone.Id));
            }

            console.Write(table);
        });

    private static string State(Watch watch, Instant now)
    {
        var speech = Speech.To(watch);
        return speech.Language.WatchStateCell(watch.IsPausedAt(now), watch.Paused ? null : watch.PausedUntil, speech);
    }
}
