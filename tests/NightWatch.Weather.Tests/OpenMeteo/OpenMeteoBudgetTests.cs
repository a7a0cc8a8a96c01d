using NightWatch.Weather.Feeds;
using NightWatch.Weather.OpenMeteo;

namespace NightWatch.Weather.Tests.OpenMeteo;

public sealed class OpenMeteoBudgetTests
{
    // 15 variables are 1.5 calls and over four weeks 3: the examples of open-meteo.com/en/pricing, from memory. The others follow from the
    // rule.
    [Theory]
    [InlineData(15, 14, 1.5)]
    [InlineData(15, 28, 3)]
    [InlineData(1, 7, 1)]
    [InlineData(10, 14, 1)]
    [InlineData(10, 28, 2)]
    [InlineData(18, 10, 1.8)]
    [InlineData(153, 7, 15.3)]
    public void An_answer_counts_by_its_variables_members_and_days(int series, int days, double calls) =>
        Assert.Equal(calls, OpenMeteoBudget.CallsOf(series, days), 9);

    [Fact]
    public void A_plan_or_a_host_of_ones_own_and_other_feeds_have_no_limit_known_here()
    {
        var free = new WeatherOptions { Usage = Usage.Private };

        Assert.Equal(10_000, free.BudgetOf("open-meteo")?.CallsADay);
        Assert.Equal(15.3, free.BudgetOf("open-meteo-ensemble/members")?.CallsAnAnswer);
        Assert.Null(free.BudgetOf("met-norway"));
        Assert.Null((free with { OpenMeteoApiKey = "k" }).BudgetOf("open-meteo"));
        Assert.Null((free with { OpenMeteoUrl = new Uri("http://127.0.0.1:8080/") }).BudgetOf("open-meteo"));
    }
}
