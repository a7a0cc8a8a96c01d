using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Planning.Watches;
using NightWatch.Store.Verdicts;

namespace NightWatch.Watchkeeping.Records;

/// <summary>One watch's nights, ascending, with what was said and what came.</summary>
internal sealed record WatchRecord(string WatchId, IReadOnlyList<RecordedNight> Nights)
{
    /// <summary>Further ahead a night is an outlook only.</summary>
    public const int MostLeadNights = 7;

    /// <summary>What a usable night not gone to counts for its reader, in drives for nothing.</summary>
    public TradeOff TradeOff { get; init; } = new(new Outing().DrivesPerLostNight);

    /// <summary>The same as a watch's reader has it: free evenings and trade-off by what the watch says now.</summary>
    public WatchRecord ForReaderOf(Watch watch) => this with
    {
        Nights = [.. Nights.Select(night => night with { IsFree = Alternatives.IsFree(watch, night.Night) })],
        TradeOff = new TradeOff(watch.Outing.DrivesPerLostNight),
    };

    /// <summary>
    /// The calls so many nights ahead that can be held against what came, on evenings on which the reader could have gone.
    /// </summary>
    /// <param name="leadNights">Nights ahead.</param>
    /// <param name="probability">Which probability is judged; null: as it was told.</param>
    public IReadOnlyList<ScoredCall> CallsAt(int leadNights, Func<VerdictMark, double>? probability = null)
    {
        probability ??= mark => mark.Probability;
        var calls = new List<ScoredCall>();
        // Of the last night that was over when it was said and of which somebody can say what came.
        var (over, cameBefore) = (0, (bool?)null);
        foreach (var night in Nights)
        {
            for (; Nights[over].Night < night.Night.PlusDays(-leadNights); over++) cameBefore = Nights[over].Usable ?? cameBefore;
            if (night.ScoredAs is not { } came || night.MarkAt(leadNights) is not { } mark) continue;
            calls.Add(new ScoredCall(WatchId, night.Night, mark.Class, probability(mark), came, cameBefore));
        }

        return calls;
    }

    /// <summary>The same calls for the scores of an archive; what simple rules would have said of them is not kept.</summary>
    public IEnumerable<ScoredLook> LooksAt(int leadNights) =>
        from call in CallsAt(leadNights)
        select new ScoredLook(call.Probability, call.SaidOn || call.Probability < TradeOff.PaysFrom, null, null, call.Usable);

    /// <summary>Going by the letters: told as on in the end, against what came, on nights of which they had the last word.</summary>
    public ContingencyTable OfLetters() => ContingencyTable.Of(
        from night in Nights
        where night.IsOfLetters && night.ScoredAs is not null && night.LastMark is not null
        select (night.Told is { IsOn: true }, night.ScoredAs != VerdictClass.NoGo));

    /// <summary>What letters and pages tell beside a new call.</summary>
    public TrackRecord Track() => new(Enumerable.Range(0, MostLeadNights + 1).ToDictionary(lead => lead, lead => CallsAt(lead)));
}
