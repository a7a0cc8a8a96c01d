using NightWatch.Planning.Chance;

namespace NightWatch.Planning.Tests.Chance;

public sealed class LearntChanceTests
{
    private static readonly ChanceKey Key = new("fake", 1);
    private static readonly LearningCourse Proven = LearningCourse.Of(ChancePrior.Shipped, 1, GivenNights.Of(200, .25, .05));
    private static readonly LearningCourse Young = LearningCourse.Of(ChancePrior.Shipped, 1, GivenNights.Of(10, .5, .5));

    [Fact]
    public void The_version_rises_whenever_other_chances_follow()
    {
        var young = Of(null, Young);
        var older = Of(young, Young);
        var proven = Of(older, Proven);
        var renewed = Of(proven, Proven);
        var fallen = Of(renewed, Young);

        Assert.Equal(
            [(0, false), (0, false), (1, true), (2, true), (3, false)],
            ((LearntChance[])[young, older, proven, renewed, fallen]).Select(one => (one.Version, one.IsUsed)));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(6, 6)]
    public void What_is_used_at_once_has_a_version_that_nothing_had(int free, int version) =>
        Assert.Equal(version, Of(null, Proven, free).Version);

    private static LearntChance Of(LearntChance? before, LearningCourse course, int free = 0) =>
        LearntChance.Of(Key, before, free, course, new Dictionary<string, int>(), GivenNights.Now);
}
