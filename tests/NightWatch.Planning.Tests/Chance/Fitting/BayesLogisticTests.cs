using CsCheck;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Tests.Chance.Fitting;

public sealed class BayesLogisticTests
{
    // The same six observations for the values below, which were computed independently of this program.
    private static readonly LogisticRow[] Six =
    [
        new([1, -2], false), new([1, -1], false), new([1, 0], true), new([1, 1], false), new([1, 2], true), new([1, 2], true),
    ];

    [Fact]
    public void The_posterior_of_six_observations_is_as_computed_independently()
    {
        var prior = new Belief([-.3, .8], SymmetricMatrix.Diagonal(1, 4));

        var (posterior, _) = BayesLogistic.Fit(prior, Six);
        var covariance = posterior.Covariance();

        Assert.Equal(-.328543, posterior.Mean[0], 6);
        Assert.Equal(.924599, posterior.Mean[1], 6);
        Assert.Equal(.501231, covariance[0, 0], 6);
        Assert.Equal(-.038968, covariance[1, 0], 6);
        Assert.Equal(.171237, covariance[1, 1], 6);
    }

    // Undamped Newton steps cycle from this start.
    [Fact]
    public void From_far_out_the_halved_steps_come_to_the_mode()
    {
        var prior = new Belief([-.3, .8], SymmetricMatrix.Diagonal(.01, .01));

        var (posterior, steps) = BayesLogistic.Fit(prior, Six, start: [6, -6]);

        Assert.Equal(-.532804, posterior.Mean[0], 6);
        Assert.Equal(1.286947, posterior.Mean[1], 6);
        Assert.InRange(steps, 1, 12);
    }

    // MacKay 1992, Neural Computation 4, 720, for the formula; the values were computed independently.
    [Theory]
    [InlineData(1.058356, .769611, .742376, .716557)]
    [InlineData(2, 4, .880797, .776845)]
    public void Log_odds_known_to_a_variance_come_to_MacKays_probability(double logOdds, double variance, double known, double moderated)
    {
        Assert.Equal(known, BayesLogistic.Sigmoid(logOdds), 6);
        Assert.Equal(moderated, BayesLogistic.Moderated(logOdds, variance), 6);
    }

    // By numerical integration, computed independently: the formula is an approximation, and a good one.
    [Fact]
    public void The_moderated_probability_is_near_the_integral() => Assert.Equal(.775200, BayesLogistic.Moderated(2, 4), .002);

    [Fact]
    public void Rows_of_weight_are_as_many_rows()
    {
        var prior = new Belief([-.3, .8], SymmetricMatrix.Diagonal(1, 4));

        var (twice, _) = BayesLogistic.Fit(prior, [.. Six, .. Six]);
        var (weighed, _) = BayesLogistic.Fit(prior, [.. Six.Select(row => row with { Weight = 2 })]);

        Assert.Equal(twice.Mean[0], weighed.Mean[0], 9);
        Assert.Equal(twice.Mean[1], weighed.Mean[1], 9);
    }

    [Fact]
    public void Without_rows_the_prior_remains()
    {
        var prior = new Belief([-.3, .8], SymmetricMatrix.Diagonal(1, 4));

        var (posterior, _) = BayesLogistic.Fit(prior, []);

        Assert.Equal(prior.Mean, posterior.Mean);
        Assert.Equal(prior.Precision.Lower, posterior.Precision.Lower);
    }

    [Fact]
    public void With_signs_asked_for_no_coefficients_that_have_them_are_more_likely()
    {
        CoefficientSign[] signs = [CoefficientSign.Free, CoefficientSign.AtLeastZero, CoefficientSign.AtMostZero];
        (from figures in Gen.Double[-2, 2].Array[2].Array[5, 40]
         from came in Gen.Bool.Array[40]
         from nudge in Gen.Double[-.1, .1].Array[3]
         select (figures, came, nudge)).Sample(trial =>
        {
            LogisticRow[] rows = [.. trial.figures.Select((two, i) => new LogisticRow([1, .. two], trial.came[i]))];
            var prior = new Belief([0, 0, 0], SymmetricMatrix.Diagonal(.5, .5, .5));

            var mode = BayesLogistic.Fit(prior, rows, signs).Posterior.Mean;
            double[] other = [mode[0] + trial.nudge[0], Math.Max(0, mode[1] + trial.nudge[1]), Math.Min(0, mode[2] + trial.nudge[2])];

            Assert.True(mode[1] >= 0 && mode[2] <= 0);
            Assert.True(Unlikeliness(rows, [.. mode]) <= Unlikeliness(rows, other) + 1e-12);
        });
    }

    [Fact]
    public void A_coefficient_that_nothing_tells_of_is_refused()
    {
        var prior = new Belief([0, 0], SymmetricMatrix.Diagonal(1, 0));

        Assert.Throws<ArgumentException>(() => BayesLogistic.Fit(prior, [new LogisticRow([1, 0], true)]));
    }

    [Fact]
    public void Rows_of_another_length_are_refused()
    {
        var prior = new Belief([0, 0], SymmetricMatrix.Diagonal(1, 1));

        Assert.Throws<ArgumentException>(() => BayesLogistic.Fit(prior, [new LogisticRow([1], true)]));
        Assert.Throws<ArgumentException>(() => BayesLogistic.Fit(prior, [], signs: [CoefficientSign.Free]));
    }

    private static double Unlikeliness(LogisticRow[] rows, double[] at) =>
        at.Sum(x => .5 * x * x) / 2 + rows.Sum(row =>
        {
            var logOdds = row.Figures.Zip(at, (figure, x) => figure * x).Sum();
            return -Math.Log(BayesLogistic.Sigmoid(row.Came ? logOdds : -logOdds));
        });
}
