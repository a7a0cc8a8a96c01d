using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.Verification;

public sealed class SkillTests
{
    [Theory]
    [InlineData(0, .2, 1)]
    [InlineData(.2, .2, 0)]
    [InlineData(.3, .2, -.5)]
    public void Skill_is_one_when_perfect_zero_when_no_better_and_negative_when_worse(double score, double reference, double skill) =>
        Assert.Equal(skill, Skill.Of(score, reference)!.Value, 12);

    [Fact]
    public void Nothing_can_be_gained_on_a_perfect_reference() => Assert.Null(Skill.Of(.1, 0));
}
