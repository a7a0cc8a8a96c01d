using System.Text;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Service.Commands.Simulations;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Photographers;
using NightWatch.Watchkeeping.SimulatedYears;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Watchkeeping.Tests.SimulatedYears;

/// <summary>Nights made by hand, their scores worked by hand.</summary>
public sealed class YearsScoresTests
{
    private static readonly SimulatedNight[] nights =
    [
        Night(0, came: VerdictClass.Go, said: VerdictClass.Go, .9, told: true, cloud: .1, newMoon: true, before: null),
        Night(1, came: VerdictClass.Marginal, said: VerdictClass.NoGo, .3, told: false, cloud: .3, newMoon: false, before: true),
        Night(2, came: VerdictClass.NoGo, said: VerdictClass.Marginal, .6, told: true, cloud: .5, newMoon: true, before: true),
        Night(3, came: VerdictClass.NoGo, said: VerdictClass.NoGo, .1, told: false, cloud: .1, newMoon: false, before: false),
    ];

    private readonly YearsScores scores = YearsScores.Of(seed: 1, years: 1, sites: 2, every: 4, nights);

    [Fact]
    public void Calls_are_counted_by_lead_and_by_the_letters()
    {
        Assert.Equal(new ContingencyTable(1, 1, 1, 1), scores.Leads[0].Raw.Calls);
        Assert.Equal(new ContingencyTable(1, 1, 1, 1), scores.Letters.Calls);
        Assert.Equal((4, 2, 1), (scores.Nights, scores.Usable, scores.Go));
    }

    [Fact]
    public void A_night_looked_at_stands_for_those_that_were_not() =>
        // One drive for nothing in half a site-year: two sites, one year, every fourth night.
        Assert.Equal((4, 2, 2), (scores.Letters.DrivesAYear, scores.Letters.DrivesForNothingAYear, scores.Letters.NightsLostAYear));

    [Fact]
    public void Probabilities_are_scored_against_climate_and_persistence()
    {
        var lead = scores.Leads[0];
        // .1², .7², .6², .1² over four; one site that was usable half the time.
        Assert.Equal(.87 / 4, lead.Raw.Brier.Value, 12);
        Assert.Equal(1 - .87 / 4 / .25, lead.Raw.SkillOnClimate!.Value, 12);
        // The three nights with a yesterday: yesterday was right on two.
        Assert.Equal(1 - (.49 + .36 + .01) / 1, lead.Raw.SkillOnPersistence!.Value, 12);
        Assert.Equal(lead.Raw.Brier, lead.Learnt.Brier);
        // No forecast is known of these looks, so nothing was learnt.
        Assert.Equal((0, false), (lead.Proof.Nights, lead.Proof.IsProven));
    }

    [Fact]
    public void What_was_learnt_before_each_look_is_scored_beside_what_was_said()
    {
        var run = new RunFigures(240, 270, .9, 3, .1);
        var figures = ChanceFigures.Of(run, [], 90, 400);
        // Four nights of two sites, a fortnight apart: none comes usable.
        SimulatedNight[] cloudy = [.. nights.SelectMany(night => Enumerable.Range(0, 2).Select(site => night with
        {
            Site = site,
            Came = VerdictClass.NoGo,
            Looks = [.. night.Looks.Select(look => look with { Figures = figures })],
        }))];
        var known = ChanceLearning.Start(ChancePrior.Shipped, 3);
        var squares = 0.0;
        foreach (var _ in nights)
        {
            squares += Math.Pow(known.ModelFor("place-1").Of(figures), 2) / nights.Length;
            known = known.After([new ChanceRow("place-1", figures, false), new ChanceRow("place-2", figures, false)]);
        }

        var lead = LeadScores.Of(3, cloudy);

        Assert.Equal(squares, lead.Learnt.Brier.Value, 12);
        Assert.Equal(squares, lead.Proof.LearntBrier, 12);
        Assert.Equal(4, lead.Proof.Nights);
    }

    [Fact]
    public void Ranked_scores_share_the_chance_of_a_usable_night_between_marginal_and_go()
    {
        // Half of the usable nights came go: cumulative (1−p, 1−p/2) against (0, 0), (0, 1), (1, 1), (1, 1).
        var worked = (.01 + .3025 + .49 + .0225 + .36 + .09 + .01 + .0025) / 4;
        Assert.Equal(worked, scores.Leads[0].Raw.RankedProbability, 12);
        // Shares .5, .25, .25: cumulative (.5, .75).
        Assert.Equal(1 - worked / ((.25 + .5625 + .25 + .0625 + 2 * (.25 + .0625)) / 4), scores.Leads[0].Raw.RankedSkill!.Value, 12);
    }

    [Fact]
    public void Each_naive_rule_goes_by_its_own()
    {
        Assert.Equal(new ContingencyTable(2, 2, 0, 0), Naive("always go").Naive.Calls);
        Assert.Equal(new ContingencyTable(1, 1, 1, 1), Naive("go at new Moon").Naive.Calls);
        Assert.Equal(new ContingencyTable(1, 1, 1, 1), Naive("go on the day's cloud figure, at most 20 %").Naive.Calls);
        Assert.Equal(new ContingencyTable(2, 1, 0, 1), Naive("go on the day's cloud figure, at most 45 %").Naive.Calls);
    }

    [Fact]
    public void Where_the_letters_do_not_win_the_text_says_so_and_why()
    {
        var always = Naive("always go");
        Assert.True(always is { FewerDrivesForNothing: true, FewerNightsLost: false });
        Assert.Equal(
            "Not better than \"always go\" in nights lost: 2.0 drives for nothing a site and year against 4.0, 2.0 usable nights lost against 0.0. "
            + "Who goes every time loses none; it costs 8 drives a year.", always.Text);
        Assert.StartsWith("Not better than \"go at new Moon\" on either count", Naive("go at new Moon").Text, StringComparison.Ordinal);
        Assert.StartsWith("Better than \"x\" on both counts", PolicyDuel.Of(new("by the letters", new(9, 1, 1, 9), 1), new("x", new(8, 2, 2, 8), 1)).Text, StringComparison.Ordinal);
        Assert.EndsWith("stays at home drives for nothing the least.", PolicyDuel.Of(new("by the letters", new(9, 1, 1, 9), 1), new("x", new(1, 0, 9, 10), 1)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_states_seed_and_sampling_and_that_the_weather_is_invented()
    {
        using var output = new MemoryStream();
        YearsTable.Draw(new Shell(output, TextWriter.Null, new FakeClock(default), Path.GetTempPath()), scores, TimeSpan.FromSeconds(7));
        var text = Encoding.UTF8.GetString(output.ToArray());
        Assert.StartsWith("2 sites, 1 year from Fri 1 Jan 2027, one night in 4, seed 1, in 7 s.", text, StringComparison.Ordinal);
        Assert.Contains("Invented weather", text, StringComparison.Ordinal);
        Assert.Contains("by the letters", text, StringComparison.Ordinal);
        Assert.Contains("Not better than \"always go\"", text, StringComparison.Ordinal);
    }

    private PolicyDuel Naive(string name) => Assert.Single(scores.Naive, duel => duel.Naive.Name == name);

    private static SimulatedNight Night(int day, VerdictClass came, VerdictClass said, double probability, bool told, double cloud, bool newMoon, bool? before) => new(
        0, new LocalDate(2027, 1, 1).PlusDays(14 * day), came, [.. Enumerable.Repeat(new LookSaid(said, probability), 4)], told, told ? 1 : 0, cloud, newMoon,
        [.. Enumerable.Repeat(before, 4)]);
}
