using System.Collections.Frozen;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Watchkeeping.Measuring;

/// <summary>
/// What the service measures about itself: one meter and one activity source, both "NightWatch". The pure projects know nothing of it.
/// Names follow OpenTelemetry's conventions (dotted, singular, unit apart), from which Prometheus' names follow.
/// </summary>
/// <remarks>
/// Labels come from closed lists (stage, pass, verdict, kind of letter, outcome, feed): no id, address, name or place, so that neither the
/// number of series nor what they tell grows with the subscribers.
/// </remarks>
internal sealed class Telemetry : IDisposable
{
    public const string Name = "NightWatch";
    public const string StageKey = "nightwatch.stage";
    public const string FeedKey = "nightwatch.feed";
    public const string OutcomeKey = "nightwatch.outcome";
    public const string PassKey = "nightwatch.pass";
    public const string VerdictKey = "nightwatch.verdict";
    public const string LetterKey = "nightwatch.letter.kind";
    public const string ReasonKey = "nightwatch.reason";

    private static readonly FrozenDictionary<Stage, string> Words = Enum.GetValues<Stage>()
        .ToFrozenDictionary(stage => stage, stage => WordOf(stage.ToString()));

    /// <summary>From a millisecond (a plan) to ten minutes (the wait for a mail server's last word).</summary>
    private static readonly InstrumentAdvice<double> Seconds = new()
    {
        HistogramBucketBoundaries = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60, 120, 600],
    };

    private readonly Meter meter = new(Name);
    private readonly ActivitySource spans = new(Name);
    private readonly Histogram<double> stages;
    private readonly Histogram<double> fetches;
    private readonly Histogram<double> sends;
    private readonly Counter<long> nights;
    private readonly Counter<long> queued;
    private readonly Counter<long> letters;
    private readonly Counter<long> dropped;
    private readonly Counter<long> failures;

    public Telemetry()
    {
        stages = meter.CreateHistogram("nightwatch.stage.duration", "s", "Time that one run of a stage takes.", advice: Seconds);
        fetches = meter.CreateHistogram(
            "nightwatch.feed.fetch.duration", "s", "Time that a weather feed takes to answer, by what came of it.", advice: Seconds);
        sends = meter.CreateHistogram(
            "nightwatch.letter.send.duration", "s", "Time that the mail server takes for one letter, by what came of it.", advice: Seconds);
        nights = meter.CreateCounter<long>("nightwatch.night.evaluated", "{night}", "Nights judged, by pass and verdict.");
        queued = meter.CreateCounter<long>("nightwatch.letter.queued", "{letter}", "Letters put into the outbox.");
        letters = meter.CreateCounter<long>("nightwatch.letter.outcome", "{letter}", "What came of letters in the outbox, by kind.");
        dropped = meter.CreateCounter<long>("nightwatch.due.dropped", "{item}", "Due items dropped, by why.");
        failures = meter.CreateCounter<long>("nightwatch.pass.failure", "{look}", "Looks at a watch that failed and are tried again.");
    }

    /// <summary>For gauges, whose value is read when somebody asks for it.</summary>
    public Meter Meter => meter;

    /// <summary>Begins a stage; dispose ends it.</summary>
    public StageTimer Begin(Stage stage) => new(stages, spans, Words[stage]);

    /// <summary>A feed was asked.</summary>
    /// <param name="feedId">The feed.</param>
    /// <param name="outcome">fresh, unchanged, unavailable, refused or failed.</param>
    /// <param name="took">How long.</param>
    public void Fetched(string feedId, string outcome, TimeSpan took) =>
        fetches.Record(
            took.TotalSeconds, new KeyValuePair<string, object?>(FeedKey, feedId), new KeyValuePair<string, object?>(OutcomeKey, outcome));

    /// <summary>A letter was handed to the mail server.</summary>
    public void Handed(string outcome, TimeSpan took) =>
        sends.Record(took.TotalSeconds, new KeyValuePair<string, object?>(OutcomeKey, outcome));

    /// <summary>A letter came to an outcome: sent, retry, ambiguous, postponed, dead or expired.</summary>
    public void Letter(string kind, string outcome)
    {
        if (letters.Enabled)
            letters.Add(
                1, new KeyValuePair<string, object?>(LetterKey, WordOf(kind)), new KeyValuePair<string, object?>(OutcomeKey, outcome));
    }

    /// <summary>Letters were queued.</summary>
    public void Queued(int count) => queued.Add(count);

    /// <summary>A night was judged.</summary>
    public void Judged(PassKind pass, VerdictClass verdict)
    {
        if (nights.Enabled)
            nights.Add(
                1,
                new KeyValuePair<string, object?>(PassKey, WordOf(pass.ToString())),
                new KeyValuePair<string, object?>(VerdictKey, WordOf(verdict.ToString())));
    }

    /// <summary>A due item was dropped: late or overtaken.</summary>
    public void Dropped(PassKind pass, bool late) =>
        dropped.Add(
            1,
            new KeyValuePair<string, object?>(PassKey, WordOf(pass.ToString())),
            new KeyValuePair<string, object?>(ReasonKey, late ? "late" : "overtaken"));

    /// <summary>
    /// Begins the counts that an alert reads, once somebody collects them: what is absent before the first failure has no increase at it.
    /// </summary>
    public void BeginCounts()
    {
        foreach (var pass in Enum.GetValues<PassKind>())
            failures.Add(0, new KeyValuePair<string, object?>(PassKey, WordOf(pass.ToString())));
    }

    /// <summary>A look at a watch failed.</summary>
    public void Failed(PassKind pass) => failures.Add(1, new KeyValuePair<string, object?>(PassKey, WordOf(pass.ToString())));

    public void Dispose()
    {
        meter.Dispose();
        spans.Dispose();
    }

    /// <summary>MorningTimeline is morning_timeline, as labels are written.</summary>
    internal static string WordOf(string name) =>
        string.Concat(
            name.Select((letter, at) => char.IsUpper(letter) ? (at > 0 ? "_" : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}
