using System.Globalization;
using NightWatch.Pictures;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Watches;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words;

namespace NightWatch.Pages.Records;

/// <summary>One lead of the record, in cells.</summary>
public sealed record RecordLeadRow(string Ahead, RecordShare Right, RecordShare Usable, RecordShare Called);

/// <summary>"28 of 34" and "82 % (66 to 91)"; the second empty where there is nothing.</summary>
public sealed record RecordShare(string Count, string Share);

/// <summary>Everything the record's page shows.</summary>
public sealed record RecordPageModel
{
    /// <summary>Name of the site.</summary>
    public required string Site { get; init; }

    /// <summary>What the record stands on.</summary>
    public required IReadOnlyList<string> Basis { get; init; }

    /// <summary>The counts of the last call before each night.</summary>
    public required ContingencyTable Calls { get; init; }

    /// <summary>The one sentence to remember; null: nothing is known yet.</summary>
    public required string? Sentence { get; init; }

    /// <summary>By nights ahead.</summary>
    public required IReadOnlyList<RecordLeadRow> Leads { get; init; }

    /// <summary>The calls over the months as an SVG element; null: no night yet.</summary>
    public required string? Ledger { get; init; }

    /// <summary>Said against came as an SVG element; null: too few nights.</summary>
    public required string? Reliability { get; init; }

    /// <summary>What is said where it is missing.</summary>
    public required string TooFew { get; init; }

    /// <summary>What the record has taught, a sentence a lead.</summary>
    public required IReadOnlyList<string> Learnt { get; init; }

    /// <summary>The same as a table for a spreadsheet.</summary>
    public required string Csv { get; init; }

    /// <summary>Months are shown as far back as this.</summary>
    private const int MostDays = 396;

    internal static RecordPageModel Of(Watch watch, WatchRecord record, IReadOnlyList<string> learnt, string csv)
    {
        RecordedNight[] tested = [.. record.Nights.Where(night => night.LastMark is not null)];
        ScoredCall[] calls =
        [
            .. from night in tested
               where night.Came is not null
               select new ScoredCall(watch.Id, night.Night, night.LastMark!.Class, night.LastMark.Probability, night.Came!.Value, null),
        ];
        var table = ContingencyTable.Of(calls.Select(call => (call.SaidOn, call.Usable)));
        var scores = RecordScores.Of([record]);
        var enough = calls.Length >= RecordScores.FewestToScore;
        return new RecordPageModel
        {
            Site = watch.Site.Name,
            Basis = BasisOf(scores),
            Calls = table,
            Sentence = table.Count == 0 ? null : SentenceOf(RecordedCalls.Of(table)),
            Leads = [.. scores.Leads.Select(lead => new RecordLeadRow(Ahead(lead.LeadNights), Say(lead.Calls.Right), Say(lead.Calls.UsableOfCalled), Say(lead.Calls.CalledOfUsable)))],
            Ledger = LedgerOf(tested),
            Reliability = enough ? ReliabilityPicture.Svg(ReliabilityDiagram.Of(calls.Select(call => call.Pair))) : null,
            TooFew = $"{calls.Length} nights are not enough evidence to judge probabilities by; {RecordScores.FewestToScore} are needed.",
            Learnt = learnt,
            Csv = csv,
        };
    }

    private static string? LedgerOf(RecordedNight[] tested)
    {
        if (tested.Length == 0) return null;
        var from = tested[^1].Night.PlusDays(-MostDays);
        return CallLedger.Svg([.. tested.Where(night => night.Night > from).Select(night => new LedgerNight(night.Night, night.LastMark!.Class != VerdictClass.NoGo, night.Usable))]);
    }

    private static List<string> BasisOf(RecordScores scores)
    {
        if (scores.From is not { } from || scores.To is not { } to) return ["Nothing is recorded yet: the record begins with the first look at a night."];
        int By(string source) => scores.Sources.GetValueOrDefault(source);
        (string Source, string Words)[] words = [("debrief", "by your own word"), ("metar", "by an aerodrome nearby"), ("analysis", "by later runs of the forecast")];
        var by = string.Join(", ", words.Where(source => By(source.Source) > 0).Select(source => $"{By(source.Source)} {source.Words}"));
        List<string> basis =
        [
            $"{LocalText.Date(from)} to {LocalText.Date(to)}: {scores.Nights} nights that the sky allowed, {scores.Known} of them with a known outcome{(by.Length > 0 ? ": " + by : "")}.",
        ];
        if (By("analysis") > 0)
            basis.Add("Later runs are no observation: they err as the forecast errs, and are kind to it. Your own word counts before them, so answer the question on the morning after.");
        if (By("metar") > 0) basis.Add("An aerodrome reports its own sky, and automatic stations see no high cloud; that part is taken from later runs.");
        return basis;
    }

    private static string SentenceOf(RecordedCalls calls) => string.Create(
        CultureInfo.InvariantCulture,
        $"The last call before the night was right {calls.Right.Hits} of {calls.Right.Count} times: {calls.Right.Share * 100:0} %, and by chance anything from {calls.Right.Interval.Low * 100:0} to {calls.Right.Interval.High * 100:0} %.");

    private static RecordShare Say(Rate rate) => rate.Share is { } share
        ? new RecordShare(
            $"{rate.Hits} of {rate.Count}", string.Create(CultureInfo.InvariantCulture, $"{share * 100:0} % ({rate.Interval.Low * 100:0} to {rate.Interval.High * 100:0})"))
        : new RecordShare("none yet", "");

    private static string Ahead(int lead) => lead == 0 ? "On the day" : English.Instance.Ahead(lead);
}
