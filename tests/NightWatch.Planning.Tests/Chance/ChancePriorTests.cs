using NightWatch.Planning.Chance;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Tests.Chance;

public sealed class ChancePriorTests
{
    [Fact]
    public void The_prior_that_comes_along_knows_every_set_from_the_day_to_five_days_ahead()
    {
        Assert.Equal(5, ChancePrior.Shipped.LastLead);
        Assert.Equal(24, ChancePrior.Shipped.All.Count);
        Assert.NotEmpty(ChancePrior.Shipped.Source);
    }

    [Fact]
    public void Past_the_last_lead_the_forecast_fades()
    {
        var five = ChancePrior.Shipped.Of(FigureSet.Runs, 5);
        var seven = ChancePrior.Shipped.Of(FigureSet.Runs, 7);

        Assert.Equal(7, seven.Lead);
        Assert.Same(five.Information, seven.Information);
        Assert.All(five.Mean.Zip(seven.Mean), pair => Assert.Equal(pair.First * .82 * .82, pair.Second, 12));
    }

    [Fact]
    public void A_prior_written_and_read_is_the_same()
    {
        var again = PriorText.Read(PriorText.Write(ChancePrior.Shipped));

        Assert.Equal((ChancePrior.Shipped.Name, ChancePrior.Shipped.Source), (again.Name, again.Source));
        Assert.All(ChancePrior.Shipped.All.Zip(again.All), pair =>
        {
            Assert.Equal(pair.First.Mean, pair.Second.Mean);
            Assert.Equal(pair.First.Information.Lower, pair.Second.Information.Lower);
        });
    }

    [Fact]
    public void A_coefficient_by_which_a_worse_forecast_would_gain_is_refused()
    {
        var information = SymmetricMatrix.Diagonal(1, 1, 1, 1, 1, 1);

        Assert.Throws<ArgumentException>(() => new PriorEntry(FigureSet.Runs, 0, [0, -.1, 0, 0, 0, 0], information));
        Assert.Throws<ArgumentException>(() => new PriorEntry(FigureSet.Runs, 0, [0, 0, 0, 0, 0, .1], information));
        Assert.Throws<ArgumentException>(() => new PriorEntry(FigureSet.RunsAndRain, 0, [0, 0, 0, 0, 0, 0], information));
    }

    [Fact]
    public void A_set_that_is_missing_is_refused() =>
        Assert.Throws<ArgumentException>(() => new ChancePrior("some", "by hand", ChancePrior.Shipped.All.Skip(1)));

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("""{"name":"a","source":"b"}""")]
    [InlineData("""{"name":"a","source":"b","entries":[{"set":"runs","lead":0,"mean":[0,0,0,0,0,0],"information":[1]}]}""")]
    public void A_text_that_is_no_prior_is_refused(string text) => Assert.Throws<FormatException>(() => PriorText.Read(text));
}
