using System.IO.Compression;
using System.Text;
using NightWatch.Service.Terminal;
using NightWatch.Weather.Archives;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Service.Commands.Archives;

/// <summary>The two files of one place and feed: forecasts as they were issued, and the hours that came.</summary>
internal sealed class RecordedFeed(string folder, ArchiveHeader header, string siteId)
{
    private static readonly Duration Month = Duration.FromDays(365.25 / 12);

    /// <summary>The forecasts.</summary>
    public string RunsPath => Path.Combine(folder, $"{siteId}.{header.Feed}.runs.jsonl.gz");

    /// <summary>The hours that came; not written for a feed that tells no past hours.</summary>
    public string OutcomePath => Path.Combine(folder, $"{siteId}.{header.Feed}.outcome.jsonl.gz");

    /// <summary>Adds a forecast, lets old ones go, and works the hours that came out again.</summary>
    /// <returns>Forecasts there are now.</returns>
    public int Add(ForecastSeries series, int keepMonths)
    {
        try
        {
            var oldest = series.RetrievedAt - Month * keepMonths;
            (string Text, int Number)[] before = File.Exists(RunsPath) ? [.. ForecastArchive.Lines(File.ReadAllBytes(RunsPath))] : [];
            string[] runs =
            [
                .. before.Skip(1).Where(run => ForecastArchive.IssuedIn(run) >= oldest).Select(run => run.Text), ArchiveWriter.Run(series),
            ];
            // The header that is there is kept, so that a file of another kind is found out and not written over.
            string[] lines = [before.Length > 0 ? before[0].Text : ArchiveWriter.RunsHeader(header), .. runs];
            // Up to their own time of issue: what came, not what was expected.
            var came = ArchiveWriter.HoursThatCame(ForecastArchive.OfLines(lines.Select((line, i) => (line, i + 1)), Duration.Zero).Runs);
            Write(RunsPath, lines);
            if (came.Count > 0) Write(OutcomePath, [ArchiveWriter.OutcomeHeader(header), .. came]);
            return runs.Length;
        }
        catch (ArchiveFormatException broken)
        {
            throw new BadInputException($"--out: '{RunsPath}' {broken.Message}");
        }
    }

    // Beside it first, so that a stop in the middle leaves the old file whole.
    private static void Write(string path, IEnumerable<string> lines)
    {
        var beside = path + ".new";
        using (var writer = new StreamWriter(new GZipStream(File.Create(beside), CompressionLevel.SmallestSize), new UTF8Encoding(false)))
        {
            foreach (var line in lines) writer.Write(line + "\n");
        }

        File.Move(beside, path, overwrite: true);
    }
}
