using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Verdicts;

public sealed class UsableChanceTests
{
    private static HourlyWeather Clear => new() { Cloud = All(0.05) };

    private static HourlyWeather Overcast => new() { Cloud = All(1) };

    [Fact]
    public void Share_of_members_that_pass_is_the_chance()
    {
        var probability = With(members: [.. Enumerable.Repeat(Clear, 15), .. Enumerable.Repeat(Overcast, 5)]);

        Assert.Equal((0.75, ProbabilityBasis.EnsembleMembers, 20), (probability.Value, probability.Basis, probability.Count));
        Assert.Equal(15, probability.Usable);
    }

    [Fact]
    public void Unanimous_members_are_held_back_from_certainty()
    {
        Assert.Equal(0.95, With(members: [.. Enumerable.Repeat(Clear, 51)]).Value);
        Assert.Equal(0.05, With(members: [.. Enumerable.Repeat(Overcast, 51)]).Value);
    }

    [Fact]
    public void A_member_passes_by_its_own_run_wherever_it_lies()
    {
        // Each member is overcast in another half of the night; the other half is long enough.
        var early = new HourlyWeather { Cloud = But(0.05, 0, 12, 1) };
        var late = new HourlyWeather { Cloud = But(0.05, 12, Hours, 1) };

        Assert.Equal(0.95, With(members: [early, late, early, late, early, late]).Value);
    }

    [Fact]
    public void What_members_do_not_carry_comes_from_the_main_forecast()
    {
        var onlyCloud = new HourlyWeather { Gust = All(null), Rain = All(null), RainProbability = All(null), Thunder = All(null), Fog = All(null) };
        var night = new DesertNight { Members = [.. Enumerable.Repeat(onlyCloud, 10)] };

        Assert.Equal(0.95, night.Plan().Verdict.Probability.Value);
        Assert.Equal(0.05, (night with { Weather = new() { Gust = All(20) } }).Plan().Verdict.Probability.Value);
    }

    [Fact]
    public void Members_that_do_not_reach_the_night_do_not_count() =>
        Assert.Equal(ProbabilityBasis.LeadTimePrior, With(members: [.. Enumerable.Repeat(new HourlyWeather { Cloud = All(null) }, 20)]).Basis);

    [Fact]
    public void Earlier_runs_that_flip_pull_the_chance_down()
    {
        var steady = With(earlier: [Clear, Clear, Clear]);
        var flipping = With(earlier: [Overcast, Clear, Overcast]);

        Assert.Equal((ProbabilityBasis.LaggedRuns, 4), (steady.Basis, steady.Count));
        Assert.True(flipping.Value < steady.Value - 0.2);
    }

    [Fact]
    public void Without_members_and_earlier_runs_the_published_skill_stands_in()
    {
        var probability = With();

        // 13 h 20 min from the issue at 06:00 to the first frame at 19:20, 5 % cloud against the 45 % limit.
        Assert.Equal(ProbabilityBasis.LeadTimePrior, probability.Basis);
        Assert.Equal(LeadTimePrior.CloudBelow(0.05, 0.45, 13 + 20 / 60.0), probability.Value, 9);
    }

    [Fact]
    public void Likely_rain_bounds_the_chance() =>
        Assert.Equal(0.6, new DesertNight { Weather = new() { RainProbability = All(0.4) } }.Plan().Verdict.Probability.Value, 9);

    [Fact]
    public void A_second_feed_that_disagrees_is_a_reason_and_lowers_the_chance()
    {
        var alone = new DesertNight().Plan().Verdict;
        var agreed = new DesertNight { SecondOpinion = Clear }.Plan().Verdict;
        var disputed = new DesertNight { SecondOpinion = Overcast }.Plan().Verdict;

        Assert.DoesNotContain(alone.Reasons, reason => reason.Factor == Factor.Disagreement);
        Assert.Equal(Severity.Ok, agreed.Reasons.Single(reason => reason.Factor == Factor.Disagreement).Severity);
        Assert.Equal(alone.Probability.Value, agreed.Probability.Value);
        Assert.Equal((VerdictClass.Marginal, Factor.Disagreement), (disputed.Class, disputed.Deciding.Factor));
        Assert.True(disputed.Probability.Value < alone.Probability.Value - 0.2);
    }

    private static Probability With(IReadOnlyList<HourlyWeather>? members = null, IReadOnlyList<HourlyWeather>? earlier = null) =>
        new DesertNight { Members = members ?? [], EarlierRuns = earlier ?? [] }.Plan().Verdict.Probability;
}
