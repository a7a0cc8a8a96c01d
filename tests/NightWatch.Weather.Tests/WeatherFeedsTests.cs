using Microsoft.Extensions.DependencyInjection;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests;

public sealed class WeatherFeedsTests
{
    [Theory]
    [InlineData("met-norway", null, null, "MET Norway needs a contact")]
    [InlineData("nws", null, null, "National Weather Service needs a contact")]
    [InlineData("open-meteo", null, null, "usage to be set")]
    [InlineData("open-meteo", Usage.Commercial, "me@example.org", "use MET Norway, set the key of a paid")]
    [InlineData("weather-frog", Usage.Private, "me@example.org", "accepted: fake, met-norway, nws, open-meteo")]
    [InlineData("", Usage.Private, null, "No feed is set")]
    [InlineData("fake,fake", null, null, "named twice")]
    public void What_is_wrong_is_said_in_a_sentence_and_refused(string feeds, Usage? usage, string? contact, string why)
    {
        var options = new WeatherOptions
        {
            Feeds = feeds.Split(',', StringSplitOptions.RemoveEmptyEntries),
            Usage = usage,
            Contact = contact,
        };

        Assert.Contains(why, Assert.Single(WeatherFeeds.Faults(options)), StringComparison.Ordinal);
        Assert.Contains(
            why,
            Assert.Throws<ArgumentException>(() => new ServiceCollection().AddWeatherFeeds(options)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_ensemble_is_refused() =>
        Assert.Contains(
            "accepted: fake, open-meteo-ensemble",
            Assert.Single(WeatherFeeds.Faults(new WeatherOptions { Feeds = ["fake"], Ensemble = "dice" })),
            StringComparison.Ordinal);

    [Fact]
    public void Feeds_come_in_the_order_of_preference_each_with_a_reader_and_its_attribution()
    {
        var options = new WeatherOptions
        {
            Feeds = ["met-norway", "open-meteo", "nws", "fake"],
            Ensemble = "open-meteo-ensemble",
            Usage = Usage.Private,
            Contact = "https://example.org/me",
        };
        using var parts = new ServiceCollection()
            .AddSingleton<IClock>(new FakeClock(Instant.FromUtc(2031, 3, 2, 12, 0)))
            .AddWeatherFeeds(options)
            .BuildServiceProvider();

        var feeds = parts.GetServices<IForecastFeed>().ToList();

        Assert.Equal(options.Feeds, feeds.Select(feed => feed.Id));
        Assert.All(feeds, feed => Assert.Equal(feed.Id, ForecastReaders.For(feed.Id).FeedId));
        Assert.All(feeds, feed => Assert.NotEmpty(feed.Attribution.Text));
        Assert.Equal("open-meteo-ensemble", ForecastReaders.ForEnsemble(parts.GetRequiredService<IEnsembleFeed>().Id).FeedId);
    }

    [Fact]
    public void A_reader_that_is_not_there_is_named_with_those_that_are()
    {
        Assert.Equal(
            "There is no feed 'frog'; accepted: met-norway, open-meteo, nws, fake.",
            Assert.Throws<ArgumentException>(() => ForecastReaders.For("frog")).Message);
        Assert.Contains(
            "open-meteo-ensemble",
            Assert.Throws<ArgumentException>(() => ForecastReaders.ForEnsemble("met-norway")).Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(51.5012, -0.1034, 27, "51.50,-0.10,20")]
    [InlineData(-0.001, 0.001, -3, "0.00,0.00,0")]
    [InlineData(-45.678, 179.996, 1699, "-45.68,180.00,1700")]
    public void A_cell_has_one_name_and_one_place(double lat, double lon, double height, string key)
    {
        var cell = FeedCell.Of(new ForecastPlace(lat, lon, height));

        Assert.Equal(key, cell.Key);
        Assert.Equal(cell, FeedCell.Of(cell.Place));
    }
}
