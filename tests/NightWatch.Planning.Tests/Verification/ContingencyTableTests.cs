using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.Verification;

public sealed class ContingencyTableTests
{
    // Finley's tornado forecasts of 1884 as in Wilks and in Jolliffe and Stephenson: 28, 72, 23, 2680. Counts and scores from memory,
    // each quotient done again by hand.
    private static readonly ContingencyTable finley = new(28, 72, 23, 2680);

    [Fact]
    public void Scores_of_Finleys_tornado_forecasts_are_the_published_ones()
    {
        Assert.Equal(2803, finley.Count);
        Assert.Equal(.549, finley.HitRate!.Value, 3);
        Assert.Equal(.720, finley.FalseAlarmRatio!.Value, 3);
        Assert.Equal(.0262, finley.FalseAlarmRate!.Value, 4);
        Assert.Equal(.966, finley.ProportionCorrect!.Value, 3);
        Assert.Equal(1.96, finley.Bias!.Value, 2);
        Assert.Equal(.228, finley.ThreatScore!.Value, 3);
        Assert.Equal(.523, finley.PeirceSkill!.Value, 3);
        Assert.Equal(.355, finley.HeidkeSkill!.Value, 3);
    }

    // Gilbert's answer to Finley: never say tornado, and be right more often (2752 of 2803).
    [Fact]
    public void One_who_never_calls_is_often_right_and_has_no_skill()
    {
        var never = new ContingencyTable(0, 0, 51, 2752);
        Assert.Equal(.982, never.ProportionCorrect!.Value, 3);
        Assert.Equal(0, never.PeirceSkill);
        Assert.Equal(0, never.HeidkeSkill);
        Assert.Null(never.FalseAlarmRatio);
    }

    [Fact]
    public void Each_call_is_counted_once() =>
        Assert.Equal(
            new ContingencyTable(1, 2, 1, 1),
            ContingencyTable.Of([(true, true), (true, false), (true, false), (false, true), (false, false)]));

    [Fact]
    public void A_share_of_nothing_is_unknown()
    {
        Assert.Null(default(ContingencyTable).HitRate);
        Assert.Null(default(ContingencyTable).ProportionCorrect);
        Assert.Null(default(ContingencyTable).HeidkeSkill);
    }
}
