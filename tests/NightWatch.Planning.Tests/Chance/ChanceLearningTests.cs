using CsCheck;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Tests.Chance;

public sealed class ChanceLearningTests
{
    private const string Hill = "{\"name\":\"hill\",\"nights\":2,\"usable\":1,\"logOdds\":1}";

    private static readonly Gen<int> Lead = Gen.Int[0, 5];

    private static readonly ForecastFigures Run = new(180, 240, .9, 4, .1);

    [Fact]
    public void More_cloud_wind_rain_or_need_never_raises_the_chance_whatever_was_learnt() =>
        Gen.Select(Forecasts.Record, Lead, Forecasts.Figures, Gen.Double[0, 2].Array[6]).Sample((record, lead, better, less) =>
        {
            var worse = new ChanceFigures(
                Less(better.Newest, less),
                better.Runs is { } runs ? Less(runs, less) : null,
                better.Room - less[3],
                better.Gust + less[4],
                better.Rain + less[5]);
            var learning = Forecasts.Learnt(ChancePrior.Shipped, lead, record);

            Assert.All([learning.ModelFor("hill"), learning.ModelFor("elsewhere"), ChanceModel.OfPrior(ChancePrior.Shipped, lead)], model =>
            {
                Assert.InRange(model.Of(better), 0, 1);
                Assert.True(model.Of(worse) <= model.Of(better) + 1e-12);
            });
        });

    [Fact]
    public void Text_written_and_read_gives_the_same_chance_to_the_last_digit() =>
        Gen.Select(Forecasts.Record, Lead, Forecasts.Figures).Sample((record, lead, figures) =>
        {
            var learning = Forecasts.Learnt(ChancePrior.Shipped, lead, record);

            var again = LearningText.Read(LearningText.Write(learning), ChancePrior.Shipped)!;

            Assert.Equal((learning.Lead, learning.Nights), (again.Lead, again.Nights));
            Assert.All(["hill", "moor", "elsewhere"], (string place) =>
                Assert.Equal(learning.ModelFor(place).Of(figures), again.ModelFor(place).Of(figures)));
        });

    // By hand: 20 nights of prior leave 4 trace(S M) = 4 * 7 / 20, whatever the information is.
    [Fact]
    public void At_first_the_prior_is_doubted_as_a_record_of_twenty_nights_and_mixed_with_an_even_climate()
    {
        var figures = ChanceFigures.Of(Run, [new AgedForecast(Run, 6)], 90, 300);
        var logOdds = ChancePrior.Shipped.Of(FigureSet.RunsAndRain, 1).Mean.Zip(figures.Of(FigureSet.RunsAndRain), (a, b) => a * b).Sum();

        var model = ChanceLearning.Start(ChancePrior.Shipped, 1).ModelFor("hill");

        Assert.Equal((.5, 0.0), (model.Climate, model.Nights));
        Assert.Equal(.8, model.Weight, 12);
        Assert.Equal(BayesLogistic.Moderated(logOdds, 1.4), model.OfForecast(figures), 9);
        Assert.Equal(.8 * model.OfForecast(figures) + .1, model.Of(figures), 12);
    }

    [Fact]
    public void A_night_with_runs_and_rain_teaches_those_that_will_lack_them()
    {
        var night = new ChanceRow("hill", ChanceFigures.Of(Run, [new AgedForecast(Run, 6)], 90, 300), false);
        var alone = ChanceFigures.Of(Run with { RainProbability = double.NaN }, [], 90, 300);
        var start = ChanceLearning.Start(ChancePrior.Shipped, 0);

        var after = start.After([night]);

        Assert.True(after.ModelFor("elsewhere").OfForecast(alone) < start.ModelFor("elsewhere").OfForecast(alone) - .01);
    }

    [Fact]
    public void Many_looks_at_one_night_teach_as_much_as_one()
    {
        var row = new ChanceRow("hill", ChanceFigures.Of(Run, [], 90, 300), false);
        var start = ChanceLearning.Start(ChancePrior.Shipped, 0);

        var (once, often) = (start.After([row]), start.After([.. Enumerable.Repeat(row, 30)]));

        Assert.Equal(once.Nights, often.Nights);
        Assert.Equal(once.ModelFor("hill").Of(row.Figures), often.ModelFor("hill").Of(row.Figures), 9);
    }

    [Fact]
    public void The_climate_of_one_place_is_not_that_of_another()
    {
        var row = new ChanceRow("hill", ChanceFigures.Of(Run, [], 90, 300), true);

        var learning = ChanceLearning.Start(ChancePrior.Shipped, 0).After([row]).After([row]);

        Assert.Equal(4.0 / 6, learning.ModelFor("hill").Climate, 12);
        Assert.Equal(.5, learning.ModelFor("moor").Climate);
    }

    [Fact]
    public void A_night_of_which_nothing_is_known_teaches_nothing()
    {
        var start = ChanceLearning.Start(ChancePrior.Shipped, 0);

        Assert.Same(start, start.After([]));
    }

    [Fact]
    public void A_place_without_a_name_is_refused() =>
        Assert.Throws<ArgumentException>(() => ChanceLearning.Start(ChancePrior.Shipped, 0).After([new ChanceRow("", default, true)]));

    [Fact]
    public void What_began_as_another_prior_or_was_written_otherwise_is_learnt_again()
    {
        var text = LearningText.Write(ChanceLearning.Start(ChancePrior.Shipped, 2));

        Assert.Null(LearningText.Read(text, ChancePrior.None));
        Assert.Null(LearningText.Read("""{"version":2,"more":[]}""", ChancePrior.Shipped));
    }

    [Theory]
    [InlineData("\"nights\":0", "\"nights\":-1", "nights")]
    [InlineData("\"lead\":2", "\"lead\":99", "lead")]
    [InlineData("\"lead\":2", "\"more\":2", "more")]
    [InlineData("\"set\":\"runs\"", "\"set\":\"newest\"", "sets")]
    [InlineData("\"precision\":[", "\"precision\":[1e300,", "precision")]
    [InlineData("\"precision\":[", "\"precision\":[-", "precision")]
    [InlineData("\"mean\":[", "\"mean\":[1e9,", "mean")]
    [InlineData("\"places\":[]", "\"places\":[{\"name\":\"a\",\"nights\":2,\"usable\":3,\"logOdds\":0}]", "usable")]
    [InlineData("\"places\":[]", "\"places\":[{\"name\":\"a\",\"nights\":2,\"usable\":1,\"logOdds\":1e9}]", "logOdds")]
    [InlineData("\"places\":[]", "\"places\":[" + Hill + "," + Hill + "]", "hill")]
    [InlineData("\"version\":1", "\"versions\":1", "version")]
    [InlineData("{\"version\"", "\"version\"", "read")]
    public void A_text_with_a_value_out_of_bounds_is_refused_by_name(string from, string to, string named)
    {
        var text = LearningText.Write(ChanceLearning.Start(ChancePrior.Shipped, 2));
        Assert.Contains(from, text, StringComparison.Ordinal);

        var spoilt = text.Replace(from, to, StringComparison.Ordinal);
        var wrong = Assert.Throws<FormatException>(() => LearningText.Read(spoilt, ChancePrior.Shipped));

        Assert.Contains(named, wrong.Message, StringComparison.Ordinal);
    }

    private static ForecastShape Less(ForecastShape shape, double[] less) =>
        new(shape.Share - less[0], shape.Worth - less[1], shape.Stretch - less[2]);
}
