using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Letters.Views;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Tests.Views;

/// <summary>What changed is told over the hours that were told.</summary>
public sealed class ChangeViewsTests
{
    private static readonly NightPlan Planned = PlannedNights.CoreLeavesTheFrame;

    /// <summary>The first two hours of the run, which are the run that was told.</summary>
    private static readonly Interval Early = new(Run.Start, Run.Start + Duration.FromHours(2));

    private static Interval Run => Planned.Verdict.Run!.Value;

    [Fact]
    public void Cloud_told_over_other_hours_than_the_run_of_now_is_held_against_those_hours()
    {
        // 90 % in the hours told, 4 % in the others; the run of now is all of it, and its mean lies between.
        var plan = WithCloud(at => at < Early.End ? 0.90 : 0.04);

        var change = Change(plan, Told(0.16, Early), "Cloud");

        Assert.Equal(("16 %", "90 %"), (change.Then, change.Now));
        Assert.Equal($"Cloud {Clock(Early)}", change.Name);
    }

    [Fact]
    public void Over_the_same_run_the_figure_is_the_one_that_the_reasons_name()
    {
        var plan = WithCloud(_ => 0.5);

        var change = Change(plan, Told(0.16, Run), "Cloud");

        Assert.Equal("Cloud", change.Name);
        Assert.Equal(("16 %", "4 %"), (change.Then, change.Now));
    }

    [Fact]
    public void A_figure_kept_before_the_hours_were_counts_as_told_over_the_run_told()
    {
        var change = Change(WithCloud(at => at < Early.End ? 0.90 : 0.04), Told(0.16, over: null), "Cloud");

        Assert.Equal(("16 %", "90 %"), (change.Then, change.Now));
    }

    [Fact]
    public void Where_the_new_figure_is_not_known_for_the_hours_told_both_hours_are_named()
    {
        var change = Change(WithCloud(at => at < Early.End ? null : 0.04), Told(0.16, Early), "Cloud");

        Assert.Equal(("Cloud", $"16 % {Clock(Early)}", $"4 % {Clock(Run)}"), (change.Name, change.Then, change.Now));
    }

    [Fact]
    public void A_figure_that_is_the_same_over_the_same_hours_is_no_change()
    {
        var plan = WithCloud(at => at < Early.End ? 0.16 : 0.60);

        Assert.DoesNotContain(Changes(plan, Told(0.16, Early)), change => change.Name.StartsWith("Cloud", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_told_keeps_the_run_with_each_figure()
    {
        var before = new ToldNight { WatchId = Planned.Watch.Id, Night = Planned.Night };

        var next = SubscriberWishes.Choose(before, Planned, Planned.MadeAt, new Wish.SwitchedFrom(Planned)).Next;

        Assert.NotEmpty(next.Figures);
        Assert.All(next.Figures, figure => Assert.Equal(Run, figure.Over));
    }

    /// <summary>To the five decimals that the steps keep.</summary>
    [Fact]
    public void Over_the_run_itself_a_factor_s_figure_by_the_hour_is_the_one_it_was_judged_by()
    {
        var compared = 0;
        for (var seed = 1; seed <= 8; seed++)
        {
            var plan = new InventedWeather(seed).Plan(Ines.CoreWatch, Ines.Night, Ines.At(7));
            foreach (
                var reason in plan.Verdict.Reasons.Where(reason =>
                    HoursFigure.IsByHours(reason.Factor) && reason.Factor != Factor.Dew && !reason.IsUnknown))
            {
                Assert.Equal(reason.Value!.Value, HoursFigure.Of(plan, reason.Factor, plan.Verdict.Run!.Value)!.Value, 4);
                compared++;
            }
        }

        Assert.True(compared > 30, $"{compared}");
    }

    private static string Clock(Interval hours) => Words.Speech.To(Planned.Watch).Clock.ShortSpan(hours);

    private static ToldNight Told(double cloud, Interval? over) => new()
    {
        WatchId = Planned.Watch.Id,
        Night = Planned.Night,
        Told = VerdictClass.Go,
        ToldBy = LetterKind.Outlook,
        ToldAt = Planned.MadeAt - Duration.FromHours(12),
        ToldRun = over ?? Early,
        Figures = [new ToldFigure(Factor.Cloud, Severity.Caution, cloud, Unit.Fraction) { Over = over }],
    };

    private static NightPlan WithCloud(Func<Instant, double?> cloud) =>
        Planned with { Conditions = [.. Planned.Conditions.Select(step => step with { Cloud = cloud(step.At) })] };

    private static ChangeView Change(NightPlan plan, ToldNight told, string name) =>
        Assert.Single(Changes(plan, told), change => change.Name.StartsWith(name, StringComparison.Ordinal));

    private static IReadOnlyList<ChangeView> Changes(NightPlan plan, ToldNight told) =>
        PageViews.Of(plan, told, [], plan.MadeAt, new LetterLinks(null, null)).Changes;
}
