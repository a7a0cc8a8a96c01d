using NightWatch.Planning.Verification.Expenses;

namespace NightWatch.Planning.Tests.Verification.Expenses;

public sealed class LookScoresTests
{
    [Fact]
    public void Four_nights_by_hand()
    {
        var scores = LookScores.Of(
            2,
            [
                new ScoredLook(0.9, MayGo: true, WithinFixedLimits: true, DarkCloud: 0.30, Usable: true),
                new ScoredLook(0.8, MayGo: true, WithinFixedLimits: false, DarkCloud: 0.45, Usable: false),
                new ScoredLook(0.2, MayGo: true, WithinFixedLimits: false, DarkCloud: 0.60, Usable: true),
                new ScoredLook(0.1, MayGo: true, WithinFixedLimits: false, DarkCloud: null, Usable: false),
            ]);
        Assert.Equal((2, 4, 0.5), (scores.Lead, scores.N, scores.UsableShare!.Value));
        // (0.01 + 0.64 + 0.64 + 0.01) / 4, against 0.25 of always saying one half.
        Assert.Equal(0.325, scores.Brier!.Value, 12);
        Assert.Equal(0.25, scores.Climate!.Value, 12);
        Assert.Equal(-0.3, scores.Skill!.Value, 12);
        var two = scores.Expense.Single(row => row.LossPerDrive == 2);
        // One drive for nothing and one night of two lost, of four: 100 · (1 + 2) / 4.
        Assert.Equal((75, 50, 100, 50), (two.Calls, two.Always, two.Never, two.FixedLimits!.Value));
        // Nobody goes by a cloud that is not known.
        Assert.Equal([new CloudRule(0.3, 50), new CloudRule(0.4, 50), new CloudRule(0.5, 75), new CloudRule(0.6, 25)], two.DarkCloud);
        Assert.Equal([1.25, 2, 3, 5, 10], scores.Expense.Select(row => row.LossPerDrive));
    }

    [Fact]
    public void Rules_that_were_not_asked_have_no_expense()
    {
        var row = LookScores.Of(0, [new ScoredLook(0.9, true, null, null, true)]).Expense[0];
        Assert.Null(row.FixedLimits);
        Assert.Empty(row.DarkCloud);
    }

    [Fact]
    public void Reliability_has_ten_cells_with_what_was_said_and_what_came()
    {
        var scores = LookScores.Of(0, [new ScoredLook(0.12, true, true, null, true), new ScoredLook(0.18, true, true, null, false),
            new ScoredLook(1, true, true, null, true)]);
        Assert.Equal(10, scores.Reliability.Count);
        Assert.Equal(0.15, scores.Reliability[1].Said!.Value, 12);
        Assert.Equal((0.5, 2), (scores.Reliability[1].Came!.Value, scores.Reliability[1].N));
        Assert.Equal(new ReliabilityCell(1, 1, 1), scores.Reliability[9]);
        Assert.Equal(new ReliabilityCell(null, null, 0), scores.Reliability[4]);
    }

    [Fact]
    public void Without_nights_nothing_is_known()
    {
        var scores = LookScores.Of(1, []);
        Assert.Equal((0, null, null, null, null), (scores.N, scores.UsableShare, scores.Brier, scores.Climate, scores.Skill));
        Assert.Empty(scores.Expense);
    }

    [Fact]
    public void Letters_are_counted_by_what_they_left_the_reader_with()
    {
        var scores = LetterScores.Of(
        [
            new LetterCourse(Sent: 2, Flips: 0, EverOn: true, OnAtLast: true, Usable: true),
            new LetterCourse(Sent: 1, Flips: 0, EverOn: true, OnAtLast: true, Usable: false),
            new LetterCourse(Sent: 3, Flips: 2, EverOn: true, OnAtLast: false, Usable: true),
            new LetterCourse(Sent: 0, Flips: 0, EverOn: false, OnAtLast: false, Usable: true),
            new LetterCourse(Sent: 2, Flips: 1, EverOn: true, OnAtLast: false, Usable: false),
        ]);
        Assert.Equal(new LetterScores(Sent: 8, Flips: 3, ToldOnFailedUnwarned: 1, UsableNeverTold: 1), scores);
    }
}
