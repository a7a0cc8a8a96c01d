using NightWatch.Pictures;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Outcomes;
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

    /// <summary>Nights that the last call before them called on and that came usable.</summary>
    public required MarkedSentence Hits { get; init; }

    /// <summary>Called on, and of no use.</summary>
    public required MarkedSentence FalseAlarms { get; init; }

    /// <summary>Called off, and usable.</summary>
    public required MarkedSentence Misses { get; init; }

    /// <summary>Called off, and of no use.</summary>
    public required MarkedSentence CorrectRejections { get; init; }

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
        RecordedNight[] tested = [.. record.Nights.Where(night => night is { IsScored: true, LastMark: not null })];
        ScoredCall[] calls =
        [
            .. from night in tested
               where night.Came is not null
               select new ScoredCall(watch.Id, night.Night, night.LastMark!.Class, night.LastMark.Probability, night.Came!.Value, null),
        ];
        var table = ContingencyTable.Of(calls.Select(call => (call.SaidOn, call.Usable)));
        var scores = RecordScores.Of([record]);
        var speech = Speech.To(watch);
        var words = speech.Language;
        var enough = calls.Length >= RecordScores.FewestToScore;
        return new RecordPageModel
        {
            Site = watch.Site.Name,
            Basis = BasisOf(scores, speech),
            Hits = words.CalledNights(saidOn: true, usable: true, table.Hits),
            FalseAlarms = words.CalledNights(saidOn: true, usable: false, table.FalseAlarms),
            Misses = words.CalledNights(saidOn: false, usable: true, table.Misses),
            CorrectRejections = words.CalledNights(saidOn: false, usable: false, table.CorrectRejections),
            Sentence = table.Count == 0 ? null : words.LastCalls(RecordedCalls.Of(table).Right),
            Leads = [.. scores.Leads.Select(lead => new RecordLeadRow(words.AheadRow(lead.LeadNights), Say(lead.Calls.Right), Say(lead.Calls.UsableOfCalled), Say(lead.Calls.CalledOfUsable)))],
            Ledger = LedgerOf(tested, speech),
            Reliability = enough ? ReliabilityPicture.Svg(ReliabilityDiagram.Of(calls.Select(call => call.Pair)), words) : null,
            TooFew = words.TooFewToJudge(calls.Length, RecordScores.FewestToScore),
            Learnt = learnt,
            Csv = csv,
        };

        RecordShare Say(Rate rate) => new(words.CountOf(rate), words.ShareOf(rate));
    }

    private static string? LedgerOf(RecordedNight[] tested, Speech speech)
    {
        if (tested.Length == 0) return null;
        var from = tested[^1].Night.PlusDays(-MostDays);
        return CallLedger.Svg([.. tested.Where(night => night.Night > from).Select(night => new LedgerNight(night.Night, night.LastMark!.Class != VerdictClass.NoGo, night.Usable))], speech);
    }

    private static List<string> BasisOf(RecordScores scores, Speech speech)
    {
        var words = speech.Language;
        if (scores.From is not { } from || scores.To is not { } to) return [words.NothingRecorded];
        (OutcomeSource Source, int Nights)[] sources =
        [
            .. Enum.GetValues<OutcomeSource>().Select(source => (source, scores.Sources.GetValueOrDefault(source.Word()))).Where(source => source.Item2 > 0),
        ];
        return
        [
            words.RecordBasis(from, to, scores.Nights, scores.Known, sources, speech),
            .. scores.NotFree > 0 ? [words.EveningsNotFree(scores.NotFree)] : Array.Empty<string>(),
            .. sources.OrderByDescending(source => source.Source).Select(source => words.Caveat(source.Source)).OfType<string>(),
        ];
    }
}
