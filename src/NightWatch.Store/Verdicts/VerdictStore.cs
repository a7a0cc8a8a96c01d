using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Verdicts;

/// <summary>One evaluation of one watch and one night: why a letter came, or did not.</summary>
public sealed record VerdictRecord
{
    /// <summary>The watch.</summary>
    public required string WatchId { get; init; }

    /// <summary>The local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>Which pass looked.</summary>
    public required PassKind Pass { get; init; }

    /// <summary>The clock reading of the pass.</summary>
    public required Instant At { get; init; }

    /// <summary>What it found.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The stored forecasts it was made from; empty: none.</summary>
    public IReadOnlyList<long> ForecastIds { get; init; } = [];

    /// <summary>Which of them was what, and what else the verdict was made from; null in rows of an earlier version.</summary>
    public InputForecastRuns? Runs { get; init; }

    /// <summary>The feed that decided; null: none did.</summary>
    public string? FeedId { get; init; }

    /// <summary>Local nights ahead, 0 on the day; null in rows of an earlier version.</summary>
    public int? LeadNights { get; init; }

    /// <summary>Hash of the inputs: two equal hashes must give two equal verdicts.</summary>
    public required string InputsHash { get; init; }

    /// <summary>The letter it led to; null: silence.</summary>
    public LetterKind? Letter { get; init; }

    /// <summary>Why it wrote or kept silent.</summary>
    public required string Why { get; init; }
}

/// <summary>
/// Every evaluation, appended (by <see cref="Passes.PassStore"/>) and never changed. A row that cannot be read is left out.
/// </summary>
public sealed class VerdictStore(Database database)
{
    private const string Columns =
        "watch_id, night, pass, at, class, probability, basis, basis_count, run_start, run_end, reasons, forecast_ids, inputs_hash, " +
        "letter, why, feed, lead, raw, calibration, runs, figures, worth";

    private static readonly RowName Name = new("verdict", ["watch_id", "night", "at"]);

    // A row whose reasons cannot be read may still be read without them.
    private static readonly RowName MarkName = new("verdict mark", ["watch_id", "night", "at"]);

    private const string MarkColumns =
        "watch_id, night, pass, at, class, probability, basis, basis_count, run_start, run_end, '' AS reasons, '' AS forecast_ids, " +
        "inputs_hash, letter, why, feed, lead, raw, calibration";

    /// <summary>All evaluations of one night, oldest first.</summary>
    public Task<IReadOnlyList<VerdictRecord>> OfNightAsync(
        string watchId, LocalDate night, CancellationToken cancellationToken = default) =>
        QueryAsync(
            $"SELECT {Columns} FROM verdict WHERE watch_id = @watchId AND night = @night ORDER BY id",
            new { watchId, night },
            cancellationToken);

    /// <summary>The newest evaluation of each night from a date on, by night.</summary>
    public Task<IReadOnlyList<VerdictRecord>> LatestAsync(string watchId, LocalDate from, CancellationToken cancellationToken = default) =>
        QueryAsync(
            $"""
            SELECT {Columns} FROM verdict WHERE id IN (SELECT max(id) FROM verdict WHERE watch_id = @watchId
              AND night >= @from GROUP BY night)
            ORDER BY night
            """,
            new { watchId, from },
            cancellationToken);

    /// <summary>All evaluations of a watch's nights, both ends included, in the order they were made.</summary>
    public Task<IReadOnlyList<VerdictRecord>> OfWatchAsync(
        string watchId, LocalDate from, LocalDate to, CancellationToken cancellationToken = default) =>
        QueryAsync(
            $"SELECT {Columns} FROM verdict WHERE watch_id = @watchId AND night >= @from AND night <= @to ORDER BY id",
            new
            {
                watchId,
                from,
                to,
            },
            cancellationToken);

    /// <summary>The same without their reasons, many times faster: for scores, exports and replays.</summary>
    /// <param name="watchId">The watch.</param>
    /// <param name="from">First night.</param>
    /// <param name="to">Last night.</param>
    /// <param name="withRuns">With what each was made from, too.</param>
    /// <param name="withFigures">With what its chance was made of, too.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public async Task<IReadOnlyList<VerdictMark>> MarksAsync(
        string watchId,
        LocalDate from,
        LocalDate to,
        bool withRuns = false,
        bool withFigures = false,
        CancellationToken cancellationToken = default)
    {
        var columns = MarkColumns + (withRuns ? ", runs" : "") + (withFigures ? ", figures" : "");
        var rows = await database.ReadAsync(
            session =>
                session.ReadAsync<Row, VerdictMark>(
                    MarkName,
                    row => row.ToMark(),
                    $"SELECT {columns} FROM verdict WHERE watch_id = @watchId AND night >= @from AND night <= @to ORDER BY id",
                    new
                    {
                        watchId,
                        from,
                        to,
                    }),
            cancellationToken);
        return rows.Readable;
    }

    internal static Task<int> AddAsync(Session session, VerdictRecord verdict) => session.ExecuteAsync(
        $"""
        INSERT INTO verdict ({Columns}) VALUES (@WatchId, @Night, @pass, @At, @class, @probability, @basis, @count, @start, @end, @reasons,
          @forecastIds, @InputsHash, @letter, @Why, @FeedId, @lead, @raw, @calibration, @runs, @figures, @worth)
        """,
        new
        {
            verdict.WatchId,
            verdict.Night,
            pass = verdict.Pass.ToString(),
            verdict.At,
            @class = verdict.Verdict.Class.ToString(),
            probability = verdict.Verdict.Probability.Value,
            basis = verdict.Verdict.Probability.Basis.ToString(),
            count = (long)verdict.Verdict.Probability.Count,
            start = verdict.Verdict.Run?.Start,
            end = verdict.Verdict.Run?.End,
            reasons = StoredReasons.Write(verdict.Verdict.Reasons),
            forecastIds = StoreJson.Write(verdict.ForecastIds),
            verdict.InputsHash,
            letter = verdict.Letter?.ToString(),
            verdict.Why,
            verdict.FeedId,
            lead = (long?)verdict.LeadNights,
            raw = verdict.Verdict.Probability.Uncalibrated,
            calibration = (long)verdict.Verdict.Probability.CalibrationVersion,
            runs = verdict.Runs is { } runs ? StoreJson.Write(runs) : null,
            figures = verdict.Verdict.Probability.Figures is { } figures ? StoredFigures.Write(figures) : null,
            worth = StoreJson.Write(StoredWorth.Of(verdict.Verdict)),
        });

    private async Task<IReadOnlyList<VerdictRecord>> QueryAsync(string sql, object values, CancellationToken cancellationToken)
    {
        var rows = await database.ReadAsync(
            session => session.ReadAsync<Row, VerdictRecord>(Name, row => row.ToRecord(), sql, values), cancellationToken);
        return rows.Readable;
    }

    private sealed class Row
    {
        public required string WatchId { get; init; }

        public required LocalDate Night { get; init; }

        public required PassKind Pass { get; init; }

        public required Instant At { get; init; }

        public required VerdictClass Class { get; init; }

        public required double Probability { get; init; }

        public required ProbabilityBasis Basis { get; init; }

        public required long BasisCount { get; init; }

        public Instant? RunStart { get; init; }

        public Instant? RunEnd { get; init; }

        public required string Reasons { get; init; }

        public required string ForecastIds { get; init; }

        public required string InputsHash { get; init; }

        public LetterKind? Letter { get; init; }

        public required string Why { get; init; }

        public string? Feed { get; init; }

        public long? Lead { get; init; }

        public double? Raw { get; init; }

        public long? Calibration { get; init; }

        public string? Runs { get; init; }

        public string? Figures { get; init; }

        public string? Worth { get; init; }

        private ChanceFigures? Asked => Figures is null ? null : StoredFigures.Read(Figures);

        private Verdict Judged => new()
        {
            Class = Class,
            Run = Run,
            Probability = new(Probability, Basis, (int)BasisCount)
            {
                Uncalibrated = Raw,
                CalibrationVersion = (int)(Calibration ?? 0),
                Figures = Asked,
            },
            Reasons = StoredReasons.Read(Reasons),
        };

        private Interval? Run => RunStart is { } start && RunEnd is { } end ? new Interval(start, end) : null;

        public VerdictMark ToMark() => new()
        {
            Night = Night,
            LeadNights = (int?)Lead,
            Pass = Pass,
            At = At,
            Class = Class,
            Probability = Probability,
            Uncalibrated = Raw,
            Basis = Basis,
            BasisCount = (int)BasisCount,
            FeedId = Feed,
            CalibrationVersion = (int)(Calibration ?? 0),
            Runs = Runs is null ? null : StoreJson.Read<InputForecastRuns>(Runs),
            Figures = Asked,
            InputsHash = InputsHash,
            Run = Run,
            Letter = Letter,
            Why = Why,
        };

        public VerdictRecord ToRecord() => new()
        {
            WatchId = WatchId,
            Night = Night,
            Pass = Pass,
            At = At,
            Verdict = Worth is null ? Judged : StoreJson.Read<StoredWorth>(Worth).Onto(Judged),
            ForecastIds = StoreJson.Read<IReadOnlyList<long>>(ForecastIds),
            Runs = Runs is null ? null : StoreJson.Read<InputForecastRuns>(Runs),
            FeedId = Feed,
            LeadNights = (int?)Lead,
            InputsHash = InputsHash,
            Letter = Letter,
            Why = Why,
        };
    }
}
