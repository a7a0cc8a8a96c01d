using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Tests.Framing;

public sealed class FrameJudgeTests
{
    [Fact]
    public void A_move_that_loses_the_subject_is_a_caution_with_a_better_end()
    {
        var away = Moved(new Heading(180, 60), new Heading(290, 20));

        Assert.Equal(Severity.Caution, away.Found(Factor.Frame).Severity);
        Assert.NotNull(away.Plan().Framing!.BetterEnd);
        Assert.Equal(away.Plan().Framing!.BetterEnd, Assert.IsType<Mend.OtherAim>(away.Found(Factor.Frame).Mend).End);
    }

    [Fact]
    public void A_move_that_follows_its_better_end_keeps_the_subject_longer()
    {
        var away = Moved(new Heading(180, 60), new Heading(290, 20));
        var better = Moved(new Heading(180, 60), away.Plan().Framing!.BetterEnd!.Value);

        Assert.True(better.Plan().Framing!.ShareIn > away.Plan().Framing!.ShareIn);
    }

    private static DesertNight Moved(Heading start, Heading end)
    {
        var night = new DesertNight();
        return night with { Watch = night.Watch with { Move = new Move { Start = start, End = end } } };
    }
}
