using NightWatch.Planning.Chance;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Tests.Chance;

/// <summary>A new installation under a feed for which the prior is wrong: how much worse than the climate it is at first.</summary>
public sealed class ChanceTrialsTests
{
    private const int Installations = 100;
    private const int Nights = 100;

    /// <summary>The Brier score's mean excess over the place's true climate, at most, in nights 1 to 10, 11 to 30 and after.</summary>
    private static readonly double[] Most = [.06, .02, .01];

    [Theory]
    [InlineData("too hopeful", 1.5, 0, true)]
    [InlineData("too gloomy", -1.5, 0, true)]
    [InlineData("clear desert", 0, 1.3, true)]
    [InlineData("cloudy coast", 0, -1.3, true)]
    [InlineData("useless", 0, 0, false)]
    [InlineData("useless in a clear place", 0, 1, false)]
    public void A_prior_that_is_wrong_costs_little_and_not_for_long(string feed, double bias, double clearness, bool useful)
    {
        var excess = new double[3];
        var counts = new double[3];
        for (var installation = 0; installation < Installations; installation++)
        {
            var random = new Random(installation);
            var prior = ChancePrior.Shipped.Of(FigureSet.RunsAndRain, installation % 4).Mean;
            var climate = ClimateOf(prior, bias, clearness, useful);
            var learning = ChanceLearning.Start(ChancePrior.Shipped, installation % 4);
            for (var night = 0; night < Nights; night++)
            {
                var figures = Draw(random, clearness);
                var came = random.NextDouble() < (useful ? Truth(prior, figures, bias) : climate);
                var said = learning.ModelFor("here").Of(figures);
                var stage = night < 10 ? 0 : night < 30 ? 1 : 2;
                excess[stage] += Square(said - (came ? 1 : 0)) - Square(climate - (came ? 1 : 0));
                counts[stage]++;
                learning = learning.After([new ChanceRow("here", figures, came)]);
            }
        }

        for (var stage = 0; stage < 3; stage++)
        {
            var mean = excess[stage] / counts[stage];
            Assert.True(mean <= Most[stage], $"{feed}: {mean:0.000} in stage {stage}, at most {Most[stage]}.");
        }
    }

    private static double Truth(IReadOnlyList<double> prior, ChanceFigures figures, double bias) =>
        BayesLogistic.Sigmoid(figures.Of(FigureSet.RunsAndRain).Zip(prior, (a, b) => a * b).Sum() - bias);

    private static double ClimateOf(IReadOnlyList<double> prior, double bias, double clearness, bool useful)
    {
        var random = new Random(1);
        return useful ? Enumerable.Range(0, 2000).Average(_ => Truth(prior, Draw(random, clearness), bias)) : .35;
    }

    // One clear or cloudy night behind all figures, each with its own scatter.
    private static ChanceFigures Draw(Random random, double clearness)
    {
        var clear = clearness + Normal(random);
        var shape = new ForecastShape(
            Math.Clamp(1.8 * clear + .6 * Normal(random), -2.7, 2.7),
            Math.Clamp(clear + .3 * Normal(random), -2, 1.5),
            Math.Clamp(1.3 * clear + .4 * Normal(random), -2, 2));
        var (room, gust) = (2 * random.NextDouble(), Math.Clamp(Normal(random), -2, 3));
        return new ChanceFigures(shape, shape, room, gust, Math.Clamp(.2 - .6 * clear + .4 * Normal(random), -.8, 3.2));
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double Square(double x) => x * x;
}
