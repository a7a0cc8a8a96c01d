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
        var oldest = series.RetrievedAt - Month * keepMonths;
        var lines = File.Exists(RunsPath) ? Lines(RunsPath) : [];
        var kept = lines.Skip(1).Where(line => IssuedIn(line) >= oldest).Append(ArchiveWriter.Run(series)).ToList();
        Write(RunsPath, [ArchiveWriter.RunsHeader(header), .. kept]);
        // Up to their own time of issue: what came, not what was expected.
        var came = ArchiveWriter.HoursThatCame(ForecastArchive.ReadRuns(File.ReadAllBytes(RunsPath), Duration.Zero).Runs);
        if (came.Count > 0) Write(OutcomePath, [ArchiveWriter.OutcomeHeader(header), .. came]);
        return kept.Count;
    }

    private Instant IssuedIn(string line)
    {
        try
        {
            return ForecastArchive.IssuedIn(line);
        }
        catch (ArchiveFormatException broken)
        {
            throw new BadInputException($"--out: '{RunsPath}' {broken.Message}");
        }
    }

    private static string[] Lines(string path)
    {
        try
        {
            using var reader = new StreamReader(new GZipStream(File.OpenRead(path), CompressionMode.Decompress), Encoding.UTF8);
            return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        }
        catch (InvalidDataException)
        {
            throw new BadInputException($"--out: '{path}' is no whole gzip file; accepted: one that this command wrote. Move it away to begin a new one.");
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
