using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Verification.Calls;

/// <summary>How earlier calls of a class did: right for go and marginal where the night came usable, for no-go where it did not.</summary>
/// <param name="Said">The class.</param>
/// <param name="LeadNights">So many nights ahead; null: the last call before each night, however far ahead.</param>
/// <param name="Right">How many came as said, of how many.</param>
public sealed record LikeCalls(VerdictClass Said, int? LeadNights, Rate Right);

/// <summary>What came of one watch's earlier calls, to be told beside a new one.</summary>
/// <param name="byLead">Calls with a known outcome, by nights ahead.</param>
public sealed class TrackRecord(IReadOnlyDictionary<int, IReadOnlyList<ScoredCall>> byLead)
{
    /// <summary>Fewer nights say nothing worth telling, as in the reliability diagram.</summary>
    public const int FewestToTell = ReliabilityBin.FewestToShow;

    /// <summary>No record.</summary>
    public static TrackRecord None { get; } = new(new Dictionary<int, IReadOnlyList<ScoredCall>>());

    /// <summary>
    /// Calls like one that is about to be told: of its class and lead; where those are too few, of its class on the last look.
    /// </summary>
    /// <returns>Null: too few either way.</returns>
    public LikeCalls? Of(VerdictClass said, int leadNights)
    {
        var same = Count(said, byLead.GetValueOrDefault(leadNights) ?? []);
        if (same.Count >= FewestToTell) return new LikeCalls(said, leadNights, same);
        var last = Count(
            said,
            [
                .. byLead
                    .OrderBy(lead => lead.Key)
                    .SelectMany(lead => lead.Value)
                    .GroupBy(call => (call.Place, call.Night))
                    .Select(night => night.First()),
            ]);
        return last.Count >= FewestToTell ? new LikeCalls(said, null, last) : null;
    }

    private static Rate Count(VerdictClass said, IReadOnlyList<ScoredCall> calls)
    {
        ScoredCall[] alike = [.. calls.Where(call => call.Said == said)];
        return new Rate(alike.Count(call => call.Usable == call.SaidOn), alike.Length);
    }
}
