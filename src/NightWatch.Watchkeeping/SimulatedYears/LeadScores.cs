using NightWatch.Planning.Chance;
using NightWatch.Planning.Verification.Expenses;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>How the looks at 15:00 so many nights ahead did.</summary>
/// <param name="LeadNights">Nights ahead.</param>
/// <param name="Said">By the prior alone.</param>
/// <param name="Learnt">By what an installation would have learnt until then, proven or not; as said where no forecast was known.</param>
/// <param name="Proof">How that did on the nights it was said of.</param>
internal sealed record LeadScores(int LeadNights, LookScores Said, LookScores Learnt, LearningProof Proof)
{
    /// <param name="lead">Nights ahead.</param>
    /// <param name="nights">Any number.</param>
    public static LeadScores Of(int lead, IReadOnlyList<SimulatedNight> nights)
    {
        ScoredLook[] looks = [.. nights.Select(night => night.Looks[lead].Scored(night.Usable))];
        var learnt = looks.ToArray();
        int[][] byNight =
        [
            .. Enumerable.Range(0, looks.Length).Where(i => Figures(i) is not null)
                .GroupBy(i => nights[i].Night).OrderBy(night => night.Key).Select(night => night.ToArray()),
        ];
        var course = LearningCourse.Of(ChancePrior.Shipped, lead, [.. byNight.Select(night => new ChanceNight(
            nights[night[0]].Night, [.. night.Select(i => new ChanceRow(nights[i].Place, Figures(i)!.Value, looks[i].Usable))]))]);
        foreach (var (night, said) in byNight.Zip(course.Said))
        {
            foreach (var (i, chance) in night.Zip(said)) learnt[i] = learnt[i] with { Probability = chance };
        }

        return new LeadScores(lead, LookScores.Of(lead, looks), LookScores.Of(lead, learnt), course.Proof);

        ChanceFigures? Figures(int i) => nights[i].Looks[lead].Probability.Figures;
    }
}
