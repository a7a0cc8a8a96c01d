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
            case "folds":
                var thin = int.Parse(given.GetValueOrDefault("--thin", "0"), System.Globalization.CultureInfo.InvariantCulture);
                var read = SampleText.Read(given["--rows"]);
                var kept = thin == 0 ? read : [.. read.Where((look, i) => look.IsWatchs || (thin > 0 && i % thin == 0))];
                Console.WriteLine($"{kept.Count} rows");
                foreach (var lead in FoldTrial.Of(kept).GroupBy(look => look.Look.Lead).OrderBy(lead => lead.Key))
                {
                    double[] skills = [FoldTrial.Skill(lead, look => look.Chance), FoldTrial.Skill(lead, look => look.Simple)];
                    Console.WriteLine(FormattableString.Invariant($"{lead.Key} {lead.Count()} {skills[0]:0.000} {skills[1]:0.000}"));
                    Cell("worthless", look => look.Look.Figures.Newest.Worth < -1.65);
                    Cell("all worthless", look => look.Look.Figures.Newest.Worth < -1.65 && look.Look.Figures.Runs?.Worth < -1.65);
                    Cell("nearly", look => look.Look.Figures.Newest.Worth is >= -1.65 and < -0.5);
                    Cell("halfway", look => look.Look.Figures.Newest.Worth is >= -0.5 and < 0.3);
                    Cell("good", look => look.Look.Figures.Newest.Worth is >= 0.3 && look.Look.Figures.Newest.Stretch < 1.9);
                    Cell("perfect", look => look.Look.Figures.Newest.Stretch >= 1.9);
                    Cell("all perfect", look => look.Look.Figures.Newest.Stretch >= 1.9 && look.Look.Figures.Runs?.Stretch >= 1.9);
                    for (var bin = 0; bin < 10; bin++) Cell($"{bin * 10}-", look => Math.Min(9, (int)(look.Chance * 10)) == bin);

                    void Cell(string name, Func<FoldedLook, bool> which)
                    {
                        var some = lead.Where(which).ToList();
                        if (some.Count == 0) return;
                        double[] v = [some.Average(look => look.Chance), some.Average(look => look.Look.Usable ? 1.0 : 0), some.Sum(look => look.Chance * (1 - look.Chance))];
                        Console.WriteLine(FormattableString.Invariant($"   {name,-14} n {some.Count,4} said {v[0]:0.000} came {v[1]:0.000} z {(v[1] - v[0]) * some.Count / Math.Sqrt(v[2]):0.0} wild {some.Min(l => l.Chance):0.00}..{some.Max(l => l.Chance):0.00}"));
                    }
                }

                var prior = PriorFit.Of(kept, "", "");
                foreach (var entry in prior.All) Console.WriteLine($"{entry.Lead} {entry.Set} {string.Join(' ', entry.Mean.Select(x => x.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)))}");
                return 0;
            default:
                Console.Error.WriteLine(
                    "usage: prior make --runs FILE --outcome FILE --rows FILE | prior fit --rows FILE --name NAME --source TEXT --out FILE");
                return 2;
        }
    }
}
