using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NodaTime;

namespace NightWatch.Planning.Tests.Verification.Calls;

public sealed class CallScoresTests
{
    private static readonly LocalDate First = new(2027, 6, 1);

    [Fact]
    public void Go_and_marginal_are_calls_and_usable_nights_answer_them()
    {
        var scores = CallScores.Of(
        [
            Call(0, VerdictClass.Go, 0.9, VerdictClass.Marginal),
            Call(1, VerdictClass.Marginal, 0.6, VerdictClass.NoGo),
            Call(2, VerdictClass.NoGo, 0.3, VerdictClass.Go),
            Call(3, VerdictClass.NoGo, 0.1, VerdictClass.NoGo),
            Call(4, VerdictClass.Go, 0.8, VerdictClass.Go),
        ]);

        Assert.Equal(new ContingencyTable(Hits: 2, FalseAlarms: 1, Misses: 1, CorrectRejections: 1), scores.Calls);
        // By hand: (.01 + .36 + .49 + .01 + .04) / 5.
        Assert.Equal(0.182, scores.Brier.Value, 12);
    }

    [Fact]
    public void Climate_is_each_places_own()
    {
        // By hand: at A 1 of 2 came, so its climate scores 1/4 a night; at B always, so 0. Mean 1/8; said 1/2 everywhere: 1/4.
        var scores = CallScores.Of(
        [
            Call(0, VerdictClass.Go, 0.5, VerdictClass.Go, "A"), Call(1, VerdictClass.Go, 0.5, VerdictClass.NoGo, "A"),
            Call(0, VerdictClass.Go, 0.5, VerdictClass.Go, "B"), Call(1, VerdictClass.Go, 0.5, VerdictClass.Go, "B"),
        ]);

        Assert.Equal(1 - 0.25 / 0.125, scores.SkillOnClimate!.Value, 12);
    }

    [Fact]
    public void Persistence_is_judged_only_where_a_night_went_before()
    {
        // By hand: the second night is said 0.8 and came; as the night before it would have been 0.
        var scores = CallScores.Of([
            Call(0, VerdictClass.Go, 0.9, VerdictClass.NoGo),
            Call(1, VerdictClass.Go, 0.8, VerdictClass.Go) with
            {
                CameBefore = false,
            },
        ]);

        Assert.Equal(1 - 0.04 / 1, scores.SkillOnPersistence!.Value, 12);
    }

    [Fact]
    public void Nothing_to_score_is_refused() => Assert.Throws<ArgumentException>(() => CallScores.Of([]));

    private static ScoredCall Call(int day, VerdictClass said, double probability, VerdictClass came, string place = "A") =>
        new(place, First.PlusDays(day), said, probability, came, null);
}
