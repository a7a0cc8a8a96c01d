using NightWatch.Planning.Chance;
using NightWatch.Planning.Verification.Calls;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>How calls and probabilities did so many nights ahead.</summary>
/// <param name="LeadNights">Nights ahead; 0 is the last look at home on the day.</param>
/// <param name="Raw">As said, by the prior alone.</param>
/// <param name="Learnt">By what an installation would have learnt until then, proven or not; as said where no forecast was known.</param>
/// <param name="Proof">How that did on the nights it was said of.</param>
internal sealed record LeadScores(int LeadNights, CallScores Raw, CallScores Learnt, LearningProof Proof)
{
    /// <param name="lead">Nights ahead.</param>
    /// <param name="nights">At least one.</param>
    public static LeadScores Of(int lead, IReadOnlyList<SimulatedNight> nights)
    {
        ScoredCall[] calls = [.. nights.Select(night => night.CallAt(lead))];
        int[][] byNight =
        [
            .. Enumerable.Range(0, calls.Length).Where(i => nights[i].Looks[lead].Figures is not null)
                .GroupBy(i => calls[i].Night).OrderBy(night => night.Key).Select(night => night.ToArray()),
        ];
        var course = LearningCourse.Of(ChancePrior.Shipped, lead, [.. byNight.Select(night => new ChanceNight(
            calls[night[0]].Night, [.. night.Select(i => new ChanceRow(calls[i].Place, nights[i].Looks[lead].Figures!.Value, calls[i].Usable))]))]);
        var learnt = calls.ToArray();
        foreach (var (night, said) in byNight.Zip(course.Said))
        {
            foreach (var (i, chance) in night.Zip(said)) learnt[i] = learnt[i] with { Probability = chance };
        }

        return new LeadScores(lead, CallScores.Of(calls), CallScores.Of(learnt), course.Proof);
    }
}
