using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Tests.Camera;

public sealed class StorageJudgeTests
{
    [Theory]
    [InlineData(72, Severity.Ok)]
    [InlineData(32, Severity.Caution)]
    public void Cards_too_small_name_the_card_that_is_missing_and_are_a_need_where_it_matters(double cardGb, Severity severity)
    {
        var night = new DesertNight();
        var reason = (night with { Watch = night.Watch with { Kit = new Kit { CardGb = cardGb } } }).Found(Factor.Storage);

        Assert.Equal(severity, reason.Severity);
        Assert.True(Assert.IsType<Mend.Card>(reason.Mend).Gb > 0);
    }
}
