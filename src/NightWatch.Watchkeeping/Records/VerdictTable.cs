using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Verdicts;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>One verdict with what came, as it is exported.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="LeadNights">Local nights ahead, 0 on the day.</param>
/// <param name="Pass">Which pass looked.</param>
/// <param name="At">The instant of it.</param>
/// <param name="Class">The verdict.</param>
/// <param name="Probability">As told.</param>
/// <param name="Uncalibrated">By the prior alone, before what the record taught; null: it was not changed.</param>
/// <param name="CalibrationVersion">Version of what was learnt; 0: nothing.</param>
/// <param name="Basis">How the probability was found.</param>
/// <param name="BasisCount">Members or runs behind it.</param>
/// <param name="Feed">The feed that decided.</param>
/// <param name="InputsHash">Equal hashes, equal verdicts.</param>
/// <param name="RunStart">The run chosen.</param>
/// <param name="RunEnd">Its end.</param>
/// <param name="Letter">The letter it led to; null: silence.</param>
/// <param name="Outcome">What the night was like, by the most trusted source; null: not known.</param>
/// <param name="OutcomeSource">Who says so.</param>
/// <param name="Why">Why it wrote or kept silent.</param>
internal sealed record VerdictRow(
    LocalDate Night,
    int? LeadNights,
    string Pass,
    Instant At,
    string Class,
    double Probability,
    double? Uncalibrated,
    int CalibrationVersion,
    string Basis,
    int BasisCount,
    string? Feed,
    string InputsHash,
    Instant? RunStart,
    Instant? RunEnd,
    string? Letter,
    string? Outcome,
    string? OutcomeSource,
    string Why);

/// <summary>Every verdict of a watch's nights as rows, as JSON has them and as CSV.</summary>
internal static class VerdictTable
{
    private static readonly string[] Header =
    [
        "night",
        "leadNights",
        "pass",
        "at",
        "class",
        "probability",
        "uncalibrated",
        "calibrationVersion",
        "basis",
        "basisCount",
        "feed",
        "inputsHash",
        "runStart",
        "runEnd",
        "letter",
        "outcome",
        "outcomeSource",
        "why",
    ];

    /// <summary>By night, then in the order they were made.</summary>
    public static IReadOnlyList<VerdictRow> Of(WatchRecord record) =>
        [.. record.Nights.SelectMany(night => night.Marks.Select(mark => Row(mark, night)))];

    /// <summary>RFC 4180, times in UTC, an empty field for what is not known.</summary>
    public static byte[] Csv(WatchRecord record) => Words.Documents.Csv.Write(Header, Of(record).Select(Fields));

    private static VerdictRow Row(VerdictMark mark, RecordedNight night) =>
        new(
            mark.Night,
            mark.LeadNights,
            Name(mark.Pass),
            mark.At,
            TradeWords.Of(mark.Class),
            mark.Probability,
            mark.Uncalibrated,
            mark.CalibrationVersion,
            Name(mark.Basis),
            mark.BasisCount,
            mark.FeedId,
            mark.InputsHash,
            mark.Run?.Start,
            mark.Run?.End,
            mark.Letter is { } letter ? TradeWords.Spaced(letter) : null,
            night.Believed?.Outcome.Word(),
            night.Believed?.Source.Word(),
            mark.Why);

    private static object?[] Fields(VerdictRow row) =>
        [
            row.Night, row.LeadNights, row.Pass, row.At, row.Class, row.Probability, row.Uncalibrated, row.CalibrationVersion, row.Basis,
            row.BasisCount, row.Feed, row.InputsHash, row.RunStart, row.RunEnd, row.Letter, row.Outcome, row.OutcomeSource, row.Why,
        ];

    private static string Name<T>(T value)
        where T : struct, Enum => char.ToLowerInvariant(value.ToString()[0]) + value.ToString()[1..];
}
