using System.Globalization;
using NightWatch.Pictures;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words;

namespace NightWatch.Pages.Records;

/// <summary>One lead of the record, in cells.</summary>
public sealed record RecordLeadRow(string Ahead, RecordShare Right, RecordShare Usable, RecordShare Called);

/// <summary>"28 of 34" and "82 % (66 to 91)"; the second empty where there is nothing.</summary>
public sealed record RecordShare(string Count, string Share);

/// <summary>What one source told, in cells: the nights of each part, and its share of all.</summary>
public sealed record RecordSourceRow(string Source, IReadOnlyList<RecordShare> Parts);

/// <summary>How the chances told so many nights ahead did, in cells, as an archive is measured.</summary>
public sealed record RecordChanceRow(
    string Ahead, string Nights, string Usable, string Brier, string Climate, string Skill, string Reliability);

/// <summary>What going by the calls cost one reader, in cells, a hundred nights.</summary>
public sealed record RecordExpenseRow(string Ahead, string LossPerDrive, string Calls, string Always, string Never);

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

    /// <summary>The measures of an archive, by nights ahead; empty: too few nights.</summary>
    public required IReadOnlyList<RecordChanceRow> Chances { get; init; }

    /// <summary>Going by the calls against always going and never.</summary>
    public required IReadOnlyList<RecordExpenseRow> Expenses { get; init; }

    /// <summary>What share of the nights each source told, as an SVG element; null: none said anything.</summary>
    public required string? Told { get; init; }

    /// <summary>The parts of a source's nights, heads of columns.</summary>
    public required IReadOnlyList<string> ToldParts { get; init; }

    /// <summary>The same as a table.</summary>
    public required IReadOnlyList<RecordSourceRow> Sources { get; init; }

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
               where night.ScoredAs is not null
               select new ScoredCall(watch.Id, night.Night, night.LastMark!.Class, night.LastMark.Probability, night.ScoredAs!.Value, null),
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
            Leads =
            [
                .. scores.Leads.Select(lead => new RecordLeadRow(
                    words.AheadRow(lead.LeadNights),
                    Say(lead.Calls.Right),
                    Say(lead.Calls.UsableOfCalled),
                    Say(lead.Calls.CalledOfUsable))),
            ],
            Ledger = LedgerOf(tested, speech),
            Reliability = enough ? ReliabilityPicture.Svg(ReliabilityDiagram.Of(calls.Select(call => call.Pair)), words) : null,
            Chances = [.. scores.ByLead.Select(lead => ChanceRow(words, lead))],
            Expenses = [.. scores.ByLead.SelectMany(lead => lead.Expense.Select(row => ExpenseRow(words, lead.Lead, row)))],
            Told = SourcePicture.Svg(scores.Tallies, words),
            ToldParts = [.. Enum.GetValues<ToldPart>().Select(words.ToldPart)],
            Sources = [.. scores.Tallies.Select(tally => SourceRow(words, tally))],
            TooFew = words.TooFewToJudge(calls.Length, RecordScores.FewestToScore),
            Learnt = learnt,
            Csv = csv,
        };

        RecordShare Say(Rate rate) => new(words.CountOf(rate), words.ShareOf(rate));
    }

    private static RecordChanceRow ChanceRow(ILanguage words, LookScores lead) => new(
        words.AheadRow(lead.Lead), Figure(lead.N, "0"), Figure(100 * lead.UsableShare, "0.0"), Figure(lead.Brier, "0.000"),
        Figure(lead.Climate, "0.000"), Figure(lead.Skill, "0.00"),
        string.Join("; ", lead.Reliability.Where(cell => cell.N > 0).Select(Cell)));

    private static string Cell(ReliabilityCell cell) =>
        FormattableString.Invariant($"{100 * cell.Said:0} > {100 * cell.Came:0} ({cell.N})");

    private static RecordExpenseRow ExpenseRow(ILanguage words, int lead, RuleExpense row) => new(
        words.AheadRow(lead), Figure(row.LossPerDrive, "0.##"), Figure(row.Calls, "0"), Figure(row.Always, "0"), Figure(row.Never, "0"));

    private static RecordSourceRow SourceRow(ILanguage words, SourceTally tally) => new(
        words.SourceName(tally.Source),
        [
            .. Enum.GetValues<ToldPart>()
                .Select(part => new RecordShare(Figure(tally.Of(part), "0"), $"{Figure(100.0 * tally.Of(part) / tally.Nights, "0")} %")),
        ]);

    private static string Figure(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "-";

    private static string? LedgerOf(RecordedNight[] tested, Speech speech)
    {
        if (tested.Length == 0) return null;
        var from = tested[^1].Night.PlusDays(-MostDays);
        return CallLedger.Svg(
            [
                .. tested
                    .Where(night => night.Night > from)
                    .Select(night => new LedgerNight(night.Night, night.LastMark!.Class != VerdictClass.NoGo, night.Usable)),
            ],
            speech);
    }

    private static List<string> BasisOf(RecordScores scores, Speech speech)
    {
        var words = speech.Language;
        if (scores.From is not { } from || scores.To is not { } to) return [words.NothingRecorded];
        (OutcomeSource Source, int Nights)[] sources =
        [
            .. Enum.GetValues<OutcomeSource>()
                .Select(source => (source, scores.Sources.GetValueOrDefault(source.Word())))
                .Where(source => source.Item2 > 0),
        ];
        return
        [
            words.RecordBasis(from, to, scores.Nights, scores.Known, sources, speech),
            .. RecordRemarks.Of(scores, words),
            .. sources.OrderByDescending(source => source.Source).Select(source => words.Caveat(source.Source)).OfType<string>(),
        ];
    }
}
