using NightWatch.Bench.Priors;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Watchkeeping.Archives;

namespace NightWatch.Watchkeeping.Tests.Archives;

public sealed class PriorFitTests
{
    private const int Draws = 1000;

    [Fact]
    public void The_program_ships_what_is_fitted_on_the_extract()
    {
        var (shipped, fitted) = (ChancePrior.Shipped, PriorFit.Of(NewYork.Looks, "", ""));
        Assert.Equal(5, shipped.LastLead);
        Assert.Contains("Open-Meteo.com, CC BY 4.0", shipped.Source, StringComparison.Ordinal);
        Assert.Equal(shipped.All.Select(entry => (entry.Lead, entry.Set)), fitted.All.Select(entry => (entry.Lead, entry.Set)));
        foreach (var (kept, made) in shipped.All.Zip(fitted.All))
        {
            Assert.All(kept.Mean.Zip(made.Mean), pair => Assert.Equal(pair.First, pair.Second, 0.001));
            Assert.All(kept.Information.Lower.Zip(made.Information.Lower), pair => Assert.Equal(pair.First, pair.Second, 0.001));
        }
    }

    [Fact]
    public void A_night_counts_as_one_whatever_it_was_asked()
    {
        var looks = NewYork.Looks.Where(look => look.Lead == 0).ToList();
        var twice = PriorFit.Of([.. looks, .. looks], "", "").Of(FigureSet.RunsAndRain, 0);
        var once = PriorFit.Of(looks, "", "").Of(FigureSet.RunsAndRain, 0);
        Assert.All(once.Mean.Zip(twice.Mean), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
        // p(1 - p) of the constant is at most a quarter a night.
        Assert.InRange(once.Information[0, 0], 0.05, 0.25);
    }

    [Fact]
    public void A_set_that_no_look_had_says_even_chances_and_nights_that_all_came_are_fitted()
    {
        var dry = NewYork.Looks.Where(look => look.Lead == 0).Take(200).Select(look => look
            with
        { Figures = look.Figures with { Rain = null }, Usable = true });
        var prior = PriorFit.Of([.. dry], "", "");
        Assert.All(prior.Of(FigureSet.RunsAndRain, 0).Mean, value => Assert.Equal(0, value));
        Assert.InRange(prior.Of(FigureSet.Runs, 0).Mean[0], 1, 20);
    }

    [Theory] // asked for: skill of the Brier score on climate, two months left out
    [InlineData(0, .55)]
    [InlineData(1, .48)]
    [InlineData(2, .36)]
    [InlineData(3, .28)]
    public void Its_chances_have_skill_and_more_than_three_figures_of_the_cloud(int lead, double least)
    {
        var looks = At(lead);
        Assert.InRange(looks.Count, 600, 640);
        var skill = FoldTrial.Skill(looks, look => look.Chance);
        Assert.InRange(skill, least, 1);
        Assert.InRange(FoldTrial.Skill(looks, look => look.Simple), 0.2, skill);
    }

    [Theory] // asked for: 15 % at the median reader
    [InlineData(0)]
    [InlineData(1)]
    public void Its_calls_are_cheaper_than_the_best_simple_rule(int lead)
    {
        var looks = At(lead);
        var savings = CostLoss.Readers
            .Select(loss => 1 - Calls(looks, loss) / Rules.Min(rule => Expense(looks, rule.Goes, loss))).Order().ToList();
        Assert.InRange(savings[savings.Count / 2], 0.15, 1);
    }

    [Fact]
    public void Its_calls_are_nowhere_dearer_than_a_simple_rule_beyond_chance()
    {
        var random = new Random(17);
        for (var lead = 0; lead <= 3; lead++)
        {
            var blocks = At(lead).GroupBy(look => (look.Look.Night.Year, look.Look.Night.Month)).Select(month => month.ToList()).ToList();
            var draws = Enumerable.Range(0, Draws).Select(_ => blocks.Select(_ => random.Next(blocks.Count)).ToArray()).ToList();
            foreach (var loss in CostLoss.Readers)
            {
                foreach (var (name, goes) in Rules)
                {
                    var dearer = blocks.Select(block => Calls(block, loss) - Expense(block, goes, loss)).ToArray();
                    var sums = draws.Select(draw => draw.Sum(block => dearer[block])).Order().ToList();
                    Assert.True(sums[(int)(Draws * 0.025)] <= 0, $"lead {lead}, N {loss}: dearer than {name}");
                }
            }
        }
    }

    [Fact]
    public void What_comes_is_what_was_said_as_far_as_so_many_nights_can_tell()
    {
        var random = new Random(17);
        var nights = NewYork.Folded.Select(look => look.Look.Night).Distinct().ToDictionary(night => night, _ => 0.0);
        var cells = NewYork.Folded.GroupBy(look => (look.Look.Lead, Cell: Math.Min(9, (int)(look.Chance * 10))))
            .Select(cell => cell.ToList()).ToList();
        Assert.InRange(cells.Count, 35, 40);
        var drawn = cells.Select(_ => new int[Draws]).ToList();
        for (var draw = 0; draw < Draws; draw++)
        {
            // One night comes alike for all leads that spoke of it.
            foreach (var night in nights.Keys) nights[night] = random.NextDouble();
            for (var cell = 0; cell < cells.Count; cell++)
                drawn[cell][draw] = cells[cell].Count(look => nights[look.Look.Night] < look.Chance);
        }

        var limits = drawn.Select(counts => counts.Order().ToArray()).Select(counts => (Low: counts[25], High: counts[974])).ToList();
        var outside = Enumerable.Range(0, Draws)
            .Select(draw => Enumerable.Range(0, cells.Count).Count(cell => IsOutside(cell, drawn[cell][draw])))
            .Order().ToList();
        var came = Enumerable.Range(0, cells.Count).Count(cell => IsOutside(cell, cells[cell].Count(look => look.Look.Usable)));
        Assert.InRange(came, 0, outside[(int)(Draws * 0.95)]);

        bool IsOutside(int cell, int count) => count < limits[cell].Low || count > limits[cell].High;
    }

    [Fact]
    public void Where_the_newest_run_leaves_nothing_or_spoils_nothing_its_chances_hold_too()
    {
        for (var lead = 0; lead <= 3; lead++)
        {
            Holds(look => look.Look.Figures.Newest.Worth < -1.65);
            Holds(look => look.Look.Figures.Newest.Stretch >= 1.9);

            void Holds(Func<FoldedLook, bool> which)
            {
                var looks = At(lead).Where(which).ToList();
                Assert.InRange(looks.Count, 100, 300);
                Assert.Equal(looks.Average(look => look.Look.Usable ? 1.0 : 0), looks.Average(look => look.Chance), 0.05);
            }
        }
    }

    private static List<FoldedLook> At(int lead) => [.. NewYork.Folded.Where(look => look.Look.Lead == lead)];

    private static IEnumerable<(string Name, Func<FoldedLook, bool> Goes)> Rules =>
    [
        ("always", _ => true),
        ("never", _ => false),
        .. LookScores.CloudLimits.Select(limit =>
            ($"cloud to {limit}", (Func<FoldedLook, bool>)(look => look.Look.Cloud!.Value.Mean <= limit))),
    ];

    private static double Calls(IReadOnlyList<FoldedLook> looks, double loss) =>
        Expense(looks, look => look.Chance >= CostLoss.PaysFrom(loss), loss);

    private static double Expense(IReadOnlyList<FoldedLook> looks, Func<FoldedLook, bool> goes, double loss) =>
        CostLoss.Expense(ContingencyTable.Of(looks.Select(look => (goes(look), look.Look.Usable))), loss);
}
