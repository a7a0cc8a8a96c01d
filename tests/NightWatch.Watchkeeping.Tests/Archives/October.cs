using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Weather.Archives;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Archives;

/// <summary>The month of real forecasts that the tests keep.</summary>
internal static class October
{
    public static readonly string RunsFile = Path.Combine(AppContext.BaseDirectory, "Archives", "Extract",
        "new-york-2024-10.runs.jsonl.gz");
    public static readonly string OutcomeFile = Path.Combine(AppContext.BaseDirectory, "Archives", "Extract",
        "new-york-2024-10.outcome.jsonl.gz");

    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];

    public static IReadOnlyList<ForecastSeries> Runs { get; } =
        ForecastArchive.ReadRuns(File.ReadAllBytes(RunsFile), ArchiveTrial.LongestAhead).Runs;

    public static ForecastSeries Came { get; } = ForecastArchive.ReadOutcome(File.ReadAllBytes(OutcomeFile)).Hours;

    /// <summary>The watch that the month is judged for.</summary>
    public static Watch Watch { get; } = ArchiveWatch.Of("New York", new GeoPosition(40.71, -73.99, 7), Zone);

    /// <summary>The trial over the month with some runs and hours.</summary>
    public static IReadOnlyList<ArchivedNight> Try(IReadOnlyList<ForecastSeries> runs, ForecastSeries came, int lookHour = 15) =>
        new ArchiveTrial(Watch, new ArchivedForecastRuns(runs), came, new LocalTime(lookHour, 0))
            .Run(TestContext.Current.CancellationToken);

    /// <summary>The hours that came, each changed as a test wants it.</summary>
    public static ForecastSeries CameWith(Action<JsonObject> change)
    {
        using var reader = new StreamReader(new GZipStream(File.OpenRead(OutcomeFile), CompressionMode.Decompress));
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var changed = lines.Skip(1).Select(line =>
        {
            var hour = JsonNode.Parse(line)!.AsObject();
            change(hour);
            return hour.ToJsonString();
        });
        return ForecastArchive.ReadOutcome(Encoding.UTF8.GetBytes(string.Join('\n', changed.Prepend(lines[0])))).Hours;
    }

    /// <summary>All that a night's record says.</summary>
    public static string Text(ArchivedNight night) =>
        FormattableString.Invariant($"{night.Night:R} {night.Use} {night.Usable} {night.Letters} {string.Join(' ', night.Looks)}");
}
