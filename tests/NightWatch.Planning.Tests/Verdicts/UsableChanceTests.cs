using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verification;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Verdicts;

public sealed class UsableChanceTests
{
    private static HourlyWeather Clear => new() { Cloud = All(0.05) };

    private static HourlyWeather Overcast => new() { Cloud = All(1) };

    [Fact]
    public void Members_that_agree_move_the_chance_and_are_counted_with_the_newest_run()
    {
        var clear = With(members: [.. Enumerable.Repeat(Clear, 19)]);
        var split = With(members: [.. Enumerable.Repeat(Clear, 9), .. Enumerable.Repeat(Overcast, 10)]);
        var overcast = With(members: [.. Enumerable.Repeat(Overcast, 19)]);

        Assert.Equal((ProbabilityBasis.EnsembleMembers, 20, 10), (split.Basis, split.Count, split.Usable!.Value));
        Assert.True(
            clear.Value > split.Value + 0.02 && split.Value > overcast.Value + 0.2, $"{clear.Value} {split.Value} {overcast.Value}");
    }

    [Fact]
    public void A_night_that_every_member_has_overcast_is_no_go_whatever_the_main_forecast_says() =>
        Assert.True(With(members: [.. Enumerable.Repeat(Overcast, 51)]).Value < 0.5);

    [Fact]
    public void A_member_passes_by_its_own_run_wherever_it_lies()
    {
        // Each member is overcast in another half of the night; the other half is long enough.
        var early = new HourlyWeather { Cloud = But(0.05, 0, 12, 1) };
        var late = new HourlyWeather { Cloud = But(0.05, 12, Hours, 1) };

        Assert.Equal(7, With(members: [early, late, early, late, early, late]).Usable);
    }

    [Fact]
    public void What_members_do_not_carry_comes_from_the_main_forecast()
    {
        var onlyCloud = new HourlyWeather
        {
            Gust = All(null),
            Rain = All(null),
            RainProbability = All(null),
            Thunder = All(null),
            Fog = All(null),
        };
        var night = new DesertNight { Members = [.. Enumerable.Repeat(onlyCloud, 10)] };

        Assert.Equal(11, night.Plan().Verdict.Probability.Usable);
        Assert.Equal(0, (night with { Weather = new() { Gust = All(20) } }).Plan().Verdict.Probability.Usable);
    }

    [Fact]
    public void Members_that_do_not_reach_the_night_do_not_count() =>
        Assert.Equal(
            ProbabilityBasis.LeadTimePrior, With(members: [.. Enumerable.Repeat(new HourlyWeather { Cloud = All(null) }, 20)]).Basis);

    [Fact]
    public void Earlier_runs_that_flip_pull_the_chance_down()
    {
        var steady = With(earlier: [Clear, Clear, Clear]);
        var flipping = With(earlier: [Overcast, Clear, Overcast]);

        Assert.Equal((ProbabilityBasis.LaggedRuns, 4), (steady.Basis, steady.Count));
        Assert.True(flipping.Value < steady.Value - 0.02, $"{flipping.Value} {steady.Value}");
    }

    [Fact]
    public void Likely_rain_lowers_the_chance() =>
        Assert.True(
            new DesertNight { Weather = new() { RainProbability = All(0.6) } }
                .Plan()
                .Verdict.Probability.Value
                < With().Value - 0.05);

    [Fact]
    public void Without_a_forecast_chances_are_even_and_said_to_be_blind()
    {
        var blind = new DesertNight { Weather = null }.Plan().Verdict.Probability;

        Assert.Equal((0.5, true), (blind.Value, blind.IsBlind));
    }

    [Fact]
    public void A_second_feed_that_disagrees_is_a_reason_and_lowers_the_chance()
    {
        var alone = new DesertNight().Plan().Verdict;
        var agreed = new DesertNight { SecondOpinion = Clear }.Plan().Verdict;
        var disputed = new DesertNight { SecondOpinion = Overcast }.Plan().Verdict;

        Assert.DoesNotContain(alone.Reasons, reason => reason.Factor == Factor.Disagreement);
        Assert.Equal(Severity.Ok, agreed.Reasons.Single(reason => reason.Factor == Factor.Disagreement).Severity);
        Assert.Equal(alone.Probability.Value, agreed.Probability.Value);
        Assert.Equal(Severity.Caution, disputed.Reasons.Single(reason => reason.Factor == Factor.Disagreement).Severity);
        Assert.True(disputed.Probability.Value < alone.Probability.Value - 0.2);
    }

    private static Probability With(IReadOnlyList<HourlyWeather>? members = null, IReadOnlyList<HourlyWeather>? earlier = null) =>
        new DesertNight { Members = members ?? [], EarlierRuns = earlier ?? [] }.Plan().Verdict.Probability;
}
