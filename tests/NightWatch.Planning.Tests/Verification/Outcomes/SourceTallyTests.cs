using NightWatch.Planning.Verification.Outcomes;

namespace NightWatch.Planning.Tests.Verification.Outcomes;

public sealed class SourceTallyTests
{
    [Fact]
    public void Who_cannot_tell_is_counted_apart_from_who_was_not_asked()
    {
        NightOutcome?[] said =
        [NightOutcome.Clear, NightOutcome.WetLens, NightOutcome.Cloudy, NightOutcome.NotTold, NightOutcome.Stayed, null];

        var tally = SourceTally.Of(OutcomeSource.Debrief, said);

        Assert.Equal(new SourceTally(OutcomeSource.Debrief, Usable: 2, Unusable: 1, NotTold: 2, Silent: 1), tally);
        Assert.Equal(6, tally.Nights);
        Assert.Equal(tally.Nights, Enum.GetValues<ToldPart>().Sum(tally.Of));
    }
}
