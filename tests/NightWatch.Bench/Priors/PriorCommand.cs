using NightWatch.Planning.Chance;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Archives;
using NodaTime;

namespace NightWatch.Bench.Priors;

/// <summary>
/// Fits the prior that comes with the program: <c>prior make --runs FILE --outcome FILE --rows FILE</c> makes the rows of an archive,
/// <c>prior fit --rows FILE --name NAME --out FILE</c> fits them.
/// </summary>
internal static class PriorCommand
{
    /// <summary>The program looks ahead so far with a chance.</summary>
    private const int LastLead = 5;

    private static readonly LocalTime look = new(15, 0);

    public static int Run(string[] args)
    {
        var given = args.Skip(1).Chunk(2).ToDictionary(pair => pair[0], pair => pair[^1]);
        switch (args.FirstOrDefault())
        {
            case "make":
                var runs = ForecastArchive.ReadRuns(File.ReadAllBytes(given["--runs"]), Duration.FromDays(9));
                var came = ForecastArchive.ReadOutcome(File.ReadAllBytes(given["--outcome"]));
                var header = runs.Header;
                var watch = ArchiveWatch.Of(
                    header.Place, new GeoPosition(header.LatitudeDeg, header.LongitudeDeg, header.ElevationM), DateTimeZoneProviders.Tzdb[header.Zone]);
                var looks = new ArchiveSamples(watch, new ArchivedRuns(runs.Runs), came.Hours, look, new SharedSky())
                    .All(LastLead, isPooled: true, CancellationToken.None);
                SampleText.Write(given["--rows"], [$"{header.Source}."], looks);
                Console.WriteLine($"{looks.Count} rows of {looks.Select(one => one.Night).Distinct().Count()} nights.");
                return 0;
            case "fit":
                var rows = SampleText.Read(given["--rows"]);
                File.WriteAllText(given["--out"], PriorText.Write(PriorFit.Of(rows, given["--name"], given["--source"])));
                return 0;
            default:
                Console.Error.WriteLine(
                    "usage: prior make --runs FILE --outcome FILE --rows FILE | prior fit --rows FILE --name NAME --source TEXT --out FILE");
                return 2;
        }
    }
}
