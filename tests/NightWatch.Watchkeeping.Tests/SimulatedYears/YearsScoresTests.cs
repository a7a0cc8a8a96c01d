using System.Text;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Service.Commands.Simulations;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Watchkeeping.SimulatedYears;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Watchkeeping.Tests.SimulatedYears;

/// <summary>Nights made by hand, their scores worked by hand.</summary>
public sealed class YearsScoresTests
{
    private static readonly SimulatedNight[] nights =
    [
        Night(0, came: VerdictClass.Go, .9, told: true, cloud: .1),
        Night(1, came: VerdictClass.Marginal, .3, told: false, cloud: .35),
        Night(2, came: VerdictClass.NoGo, .6, told: true, cloud: .5),
        Night(3, came: VerdictClass.NoGo, .1, told: false, cloud: .1),
    ];

    private readonly YearsScores scores = YearsScores.Of("marine-coast", seed: 1, years: 1, sites: 2, every: 4, members: 0, nights);

    [Fact]
    public void Chances_are_scored_against_the_usable_share()
    {
        var lead = scores.Leads[0].Said;
        // .1², .7², .6², .1² over four; half of them usable.
        Assert.Equal((4, .5), (lead.N, lead.UsableShare!.Value));
        Assert.Equal(.87 / 4, lead.Brier!.Value, 12);
        Assert.Equal(1 - .87 / 4 / .25, lead.Skill!.Value, 12);
        Assert.Equal(lead.Brier, scores.Leads[0].Learnt.Brier);
        // No forecast is known of these looks, so nothing was learnt.
        Assert.Equal((0, false), (scores.Leads[0].Proof.Nights, scores.Leads[0].Proof.IsProven));
    }

    [Fact]
    public void Calls_are_held_against_the_rules_that_an_archive_is_held_against()
    {
        var two = Assert.Single(scores.Leads[0].Said.Expense, row => row.LossPerDrive == 2);
        // Going pays from a third: one drive for nothing, one night lost, over four nights.
        Assert.Equal((75, 50, 100), (two.Calls, two.Always, two.Never));
        Assert.Equal([75, 25, 50, 50], two.DarkCloud.Select(rule => rule.Expense));
    }

    [Fact]
    public void Letters_are_counted() => Assert.Equal(new LetterScores(2, 0, 1, 1), scores.Letters);

    [Fact]
    public void What_was_learnt_before_each_look_is_scored_beside_what_was_said()
    {
        var run = new ForecastFigures(240, 270, .9, 3, .1);
        var figures = ChanceFigures.Of(run, [], 90, 400);
        // Four nights of two sites, a fortnight apart: none comes usable.
        SimulatedNight[] cloudy = [.. nights.SelectMany(night => Enumerable.Range(0, 2).Select(site => night with
        {
            Site = site,
            Came = VerdictClass.NoGo,
            Looks = [.. night.Looks.Select(look => look with { Probability = look.Probability with { Figures = figures } })],
        }))];
        var known = ChanceLearning.Start(ChancePrior.Shipped, 3);
        var squares = 0.0;
        foreach (var _ in nights)
        {
            squares += Math.Pow(known.ModelFor("place-1").Of(figures), 2) / nights.Length;
            known = known.After([new ChanceRow("place-1", figures, false), new ChanceRow("place-2", figures, false)]);
        }

        var lead = LeadScores.Of(3, cloudy);

        Assert.Equal(squares, lead.Learnt.Brier!.Value, 12);
        Assert.Equal(squares, lead.Proof.LearntBrier, 12);
        Assert.Equal(4, lead.Proof.Nights);
    }

    [Theory]
    [InlineData(0, "No ensemble")]
    [InlineData(20, "an assumption")]
    public void The_table_states_climate_seed_and_sampling_and_what_it_takes_on_trust(int members, string about)
    {
        using var output = new MemoryStream();
        YearsTable.Draw(
            new Shell(output, TextWriter.Null, new FakeClock(default), Path.GetTempPath()),
            scores with
            {
                Members = members,
            },
            TimeSpan.FromSeconds(7));
        var text = Encoding.UTF8.GetString(output.ToArray());
        Assert.StartsWith(
            "Invented weather, marine-coast: 2 sites, 1 year from Fri 1 Jan 2027, one night in 4, seed 1, in 7 s.",
            text,
            StringComparison.Ordinal);
        Assert.Contains(about, text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("Cloud to 40 %", text, StringComparison.Ordinal);
    }

    private static SimulatedNight Night(int day, VerdictClass came, double probability, bool told, double cloud) =>
        new(
            0,
            new LocalDate(2027, 1, 1).PlusDays(14 * day),
            came,
            [
                .. Enumerable
                    .Range(0, 4)
                    .Select(lead => new ArchivedLook(
                        lead,
                        default,
                        VerdictClass.Marginal,
                        new Probability(probability, ProbabilityBasis.LaggedRuns, 0),
                        null,
                        cloud,
                        true,
                        true,
                        true)),
            ],
            new LetterCourse(told ? 1 : 0, 0, told, told, came != VerdictClass.NoGo));
}
