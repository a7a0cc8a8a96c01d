using CsCheck;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Tests.Chance;

public sealed class ChanceFiguresTests
{
    private static readonly ForecastFigures Good = new(180, 240, .9, 9, .1);

    private static readonly Gen<(ForecastFigures Better, ForecastFigures Worse)> TwoRuns =
        from run in Forecasts.Run
        from less in Gen.Double[0, 1].Array[3]
        from more in Gen.Double[0, 1].Array[2]
        select (run, new ForecastFigures(
            run.UsableMin * less[0],
            run.WorthMin * less[1],
            run.Stretch * less[2],
            run.GustMps + more[0] * 10,
            run.RainProbability + more[1] * (1 - run.RainProbability)));

    [Fact]
    public void More_cloud_wind_rain_moonlight_or_glow_betters_no_figure() =>
        Gen.Select(TwoRuns, Gen.Select(TwoRuns, Gen.Double[0, 60]).Array[0, 8], Gen.Double[30, 300], Gen.Double[0, 700], Gen.Double[0, 1])
            .Sample((newest, others, needMin, clearMin, moon) => HoldNoBetter(
                ChanceFigures.Of(newest.Better, [.. others.Select(run => Aged(run.Item1.Better, run.Item2))], needMin, clearMin),
                ChanceFigures.Of(newest.Worse, [.. others.Select(run => Aged(run.Item1.Worse, run.Item2))], needMin, clearMin * moon)));

    [Fact]
    public void A_greater_need_betters_no_figure() =>
        Gen.Select(Forecasts.Run, Forecasts.Others, Gen.Double[30, 300], Gen.Double[1, 3], Gen.Double[0, 700])
            .Sample((newest, others, needMin, greater, clearMin) => HoldNoBetter(
                ChanceFigures.Of(newest, others, needMin, clearMin), ChanceFigures.Of(newest, others, needMin * greater, clearMin)));

    // By hand, need 100: ln(200/120) and ln(260/120) of the newest alone, 4 (.9 - .5), ln 3, (9 - 6)/3, (10 - 20)/25.
    [Fact]
    public void The_newest_run_alone_gives_its_own_figures()
    {
        var figures = ChanceFigures.Of(Good, [], needMin: 100, clearSkyUsableMin: 300);

        Assert.Equal(FigureSet.NewestAndRain, figures.Set);
        AssertNear([1, Math.Log(200.0 / 120), Math.Log(260.0 / 120), 1.6, Math.Log(3), 1, -.4], figures.Of(figures.Set));
    }

    // By hand: weights 1 and exp(-1); one reaches 100 minutes, the other does not.
    [Fact]
    public void Earlier_runs_are_weighed_by_their_age()
    {
        var w = Math.Exp(-1);
        var n = (1 + w) * (1 + w) / (1 + w * w);
        var s = 1 / (1 + w);

        var earlier = Aged(new ForecastFigures(50, 60, .3, double.NaN, double.NaN), 18);
        var figures = ChanceFigures.Of(Good, [earlier], needMin: 100, clearSkyUsableMin: 300);

        Assert.Equal(FigureSet.RunsAndRain, figures.Set);
        AssertNear(
            [
                1,
                Math.Log((s * n + .5) / ((1 - s) * n + .5)),
                Math.Log(((240 + w * 60) / (1 + w) + 20) / 120),
                4 * ((.9 + w * .3) / (1 + w) - .5),
                Math.Log(3),
                1,
                -.4,
            ],
            figures.Of(figures.Set));
    }

    // Seven runs that all agree: ln((7 + .5) / .5) = ln 15.
    [Fact]
    public void Fifty_members_know_no_more_than_seven_runs()
    {
        var figures = ChanceFigures.Of(Good, [.. Enumerable.Repeat(new AgedForecast(Good, 0), 50)], needMin: 100, clearSkyUsableMin: 300);

        Assert.Equal(Math.Log(15), figures.Runs!.Value.Share, 9);
    }

    [Fact]
    public void A_run_of_more_than_two_days_ago_says_nothing()
    {
        var alone = ChanceFigures.Of(Good, [], 100, 300);

        Assert.Equal(alone, ChanceFigures.Of(Good, [new AgedForecast(default, 48.1)], 100, 300));
        Assert.NotEqual(alone, ChanceFigures.Of(Good, [new AgedForecast(default, 48)], 100, 300));
    }

    [Theory]
    [InlineData(false, true, FigureSet.NewestAndRain)]
    [InlineData(false, false, FigureSet.Newest)]
    [InlineData(true, true, FigureSet.RunsAndRain)]
    [InlineData(true, false, FigureSet.Runs)]
    public void What_is_known_chooses_the_coefficients(bool earlier, bool rain, FigureSet set)
    {
        var newest = Good with { RainProbability = rain ? .1 : double.NaN };

        var figures = ChanceFigures.Of(newest, earlier ? [new AgedForecast(Good, 6)] : [], 100, 300);

        Assert.Equal(set, figures.Set);
        Assert.All(FigureSets.All, other => Assert.Equal((earlier || !other.HasRuns()) && (rain || !other.HasRain()), figures.Has(other)));
        Assert.All(FigureSets.All.Where(figures.Has), other => Assert.Equal(other.Length(), figures.Of(other).Length));
    }

    [Fact]
    public void Unknown_wind_stands_in_the_middle_and_unknown_rain_in_no_figure()
    {
        var figures = ChanceFigures.Of(Good with { GustMps = double.NaN, RainProbability = double.NaN }, [], 100, 300);

        Assert.Equal(0, figures.Gust);
        Assert.Null(figures.Rain);
        Assert.Throws<InvalidOperationException>(() => figures.Of(FigureSet.NewestAndRain));
    }

    [Theory]
    [InlineData(0, 0, .5, 0, 0, 0, "need")]
    [InlineData(-1, 0, .5, 0, 0, 90, "UsableMin")]
    [InlineData(0, double.NaN, .5, 0, 0, 90, "WorthMin")]
    [InlineData(0, 0, 1.1, 0, 0, 90, "Stretch")]
    [InlineData(0, 0, .5, -1, 0, 90, "GustMps")]
    [InlineData(0, 0, .5, 0, 40, 90, "RainProbability")]
    public void What_cannot_be_is_refused_by_name(
        double usable, double worth, double stretch, double gust, double rain, double need, string named)
    {
        var run = new ForecastFigures(usable, worth, stretch, gust, rain);

        var wrong = Assert.Throws<ArgumentException>(() => ChanceFigures.Of(run, [], need, 300));

        Assert.Contains(named, wrong.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ChanceFigures.Of(Good, [new AgedForecast(Good, -1)], 90, 300));
    }

    private static AgedForecast Aged(ForecastFigures run, double ageHours) => new(run, ageHours);

    private static void HoldNoBetter(ChanceFigures better, ChanceFigures worse)
    {
        Assert.Equal(better.Set, worse.Set);
        var (above, below) = (better.Of(better.Set), worse.Of(worse.Set));
        var signs = better.Set.Signs();
        for (var i = 1; i < signs.Count; i++)
        {
            var gain = signs[i] == CoefficientSign.AtLeastZero ? below[i] - above[i] : above[i] - below[i];
            Assert.True(gain <= 1e-12, $"Figure {i} was {above[i]} and became {below[i]}.");
        }
    }

    private static void AssertNear(double[] expected, IReadOnlyList<double> actual)
    {
        Assert.Equal(expected.Length, actual.Count);
        Assert.All(expected.Zip(actual), pair => Assert.Equal(pair.First, pair.Second, 9));
    }
}
