using NightWatch.Planning.Chance;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Archives;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Bench.Priors;

/// <summary>
/// Makes the prior that comes with the program. <c>prior rows</c> makes an archive into the rows that it is fitted on,
/// <c>prior fit</c> fits them, <c>prior trials</c> makes the rows that learning is tried on.
/// </summary>
internal static class PriorCommand
{
    /// <summary>A chance is told so many nights ahead.</summary>
    private const int LastLead = 5;

    private const int LastTriedLead = 3;
    private const string Changed = "Changed: figures of looks at 15:00 and what came, not the weather itself.";

    /// <summary>The farthest hour that the earliest of the runs of such a look is asked for.</summary>
    private static readonly Duration longestAhead = Duration.FromDays(9);

    private static readonly LocalTime lookAt = new(15, 0);

    public static int Run(string[] args)
    {
        var given = args.Skip(1).Chunk(2).Where(pair => pair.Length == 2).ToDictionary(pair => pair[0], pair => pair[1]);
        switch (args.FirstOrDefault())
        {
            case "rows" when Has("--runs", "--outcome", "--out"):
                Rows(Archive(), given["--out"]);
                return 0;
            case "fit" when Has("--rows", "--name", "--source", "--out"):
                var fit = PriorFit.Of(SampleText.Read(given["--rows"]), given["--name"], given["--source"]);
                File.WriteAllText(given["--out"], PriorText.Write(fit));
                return 0;
            case "trials" when Has("--runs", "--outcome", "--tucson", "--out"):
                Trials(Archive(), [.. File.ReadLines(given["--tucson"]).Where(line => line[0] != '#')], given["--out"]);
                return 0;
            default:
                Console.Error.WriteLine(
                    "usage: prior rows --runs FILE --outcome FILE --out FILE | prior fit --rows FILE --name NAME --source TEXT --out " +
                    "FILE | prior trials --runs FILE --outcome FILE --tucson FILE --out FOLDER");
                return 2;
        }

        bool Has(params string[] options) => options.All(given.ContainsKey);

        (IssuedForecasts Runs, ForecastSeries Came) Archive() => (
            ForecastArchive.ReadRuns(File.ReadAllBytes(given["--runs"]), longestAhead),
            ForecastArchive.ReadOutcome(File.ReadAllBytes(given["--outcome"])).Hours);
    }

    private static void Rows((IssuedForecasts Runs, ForecastSeries Came) archive, string file)
    {
        var looks = Looks(WatchAt(archive.Runs.Header), archive.Runs.Runs, archive.Came, LastLead, isPooled: true);
        SampleText.Write(file, [archive.Runs.Header.Source, Changed], looks);
        Console.WriteLine($"{looks.Count} rows of {looks.Select(look => look.Night).Distinct().Count()} nights.");
    }

    private static void Trials((IssuedForecasts Runs, ForecastSeries Came) archive, IReadOnlyList<string> tucson, string folder)
    {
        var watch = WatchAt(archive.Runs.Header);
        var desert = ArchiveWatch.Of("Tucson", OtherWeather.Tucson, DateTimeZoneProviders.Tzdb["America/Phoenix"]);
        var (desertRuns, desertCame) = OtherWeather.AtTucson(archive.Runs, archive.Came, tucson);
        Write("cloudier", watch, OtherWeather.Biased(archive.Runs, 0.25), archive.Came, "25 points of cloud added to the forecasts.");
        Write("clearer", watch, OtherWeather.Biased(archive.Runs, -0.25), archive.Came, "25 points of cloud taken off the forecasts.");
        Write("tucson", desert, desertRuns, desertCame,
            "The feed's errors on the clouds of a typical year at Tucson (NREL TMY3, public domain).");

        void Write(string name, Watch whose, IReadOnlyList<ForecastSeries> runs, ForecastSeries came, string how) => SampleText.Write(
            Path.Combine(folder, name + ".rows.csv.gz"), [archive.Runs.Header.Source, Changed, how],
            Looks(whose, runs, came, LastTriedLead, isPooled: false).Select(look => look with { Cloud = null }));
    }

    private static IReadOnlyList<SampledLook> Looks(
        Watch watch,
        IReadOnlyList<ForecastSeries> runs,
        ForecastSeries came,
        int lastLead,
        bool isPooled) =>
        new ArchiveSamples(watch, new ArchivedForecastRuns(runs), came, lookAt, new SharedSky()).All(
            lastLead, isPooled, CancellationToken.None);

    private static Watch WatchAt(ArchiveHeader header) => ArchiveWatch.Of(
        header.Place, new GeoPosition(header.LatitudeDeg, header.LongitudeDeg, header.ElevationM), DateTimeZoneProviders.Tzdb[header.Zone]);
}
