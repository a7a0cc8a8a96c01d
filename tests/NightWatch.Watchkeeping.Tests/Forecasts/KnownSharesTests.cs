using Microsoft.Extensions.Logging;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Tests.Measuring;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Forecasts;

/// <summary>An answer that lacks what it should tell is said to lack it, once.</summary>
public sealed class KnownSharesTests : IDisposable
{
    private static readonly Instant Now = Instant.FromUtc(2027, 5, 25, 2, 10);

    private readonly Telemetry telemetry = new();
    private readonly Lines log = new();
    private readonly Heard heard;
    private readonly KnownShares shares;

    public KnownSharesTests()
    {
        heard = new Heard(telemetry);
        shares = new KnownShares(telemetry, log);
    }

    public void Dispose()
    {
        heard.Dispose();
        telemetry.Dispose();
    }

    [Fact]
    public void A_quantity_that_is_not_told_any_more_is_said_once_and_that_it_is_told_again_once()
    {
        Answer(10);
        Assert.Empty(log.Told);

        Answer(40, without: PeriodQuantity.GustMps);
        Assert.Equal([(LogLevel.Error, "gust")], log.Told);
        heard.Ask();
        Assert.Equal(1, heard.Sum("nightwatch.feed.lacking{nightwatch.feed=made-up,nightwatch.quantity=gust}"));
        Assert.Equal(0, heard.Sum("nightwatch.feed.lacking{nightwatch.feed=made-up,nightwatch.quantity=cloud}"));
        Assert.Equal(1, heard.Sum("nightwatch.feed.known{nightwatch.feed=made-up,nightwatch.quantity=cloud}"), 0.01);

        Answer(40);
        Assert.Equal([(LogLevel.Error, "gust"), (LogLevel.Information, "gust")], log.Told);
    }

    [Fact]
    public void What_every_feed_owes_is_missed_from_the_first_answers_on()
    {
        Answer(20, without: PeriodQuantity.PrecipitationMm);

        Assert.Equal([(LogLevel.Error, "precipitation")], log.Told);
    }

    /// <summary>Not every feed tells gusts or fog everywhere, and one answer in three without them is no collapse.</summary>
    [Fact]
    public void What_a_feed_never_told_or_tells_mostly_is_not_missed()
    {
        for (var i = 0; i < 40; i++)
        {
            Answer(1, i % 3 == 0 ? PeriodQuantity.GustMps : null);
        }

        Assert.Empty(log.Told);
    }

    private void Answer(int times, PeriodQuantity? without = null)
    {
        var builder = new ForecastSeriesBuilder();
        for (var hour = -1; hour < 60; hour++)
        {
            var at = Now.Plus(Duration.FromHours(hour)) - Duration.FromMinutes(10);
            builder
                .Add(InstantQuantity.CloudAreaFraction, at, 0.4)
                .Add(InstantQuantity.AirTemperatureC, at, 11)
                .Add(InstantQuantity.WindMps, at, 3);
            if (without != PeriodQuantity.GustMps) builder.Add(PeriodQuantity.GustMps, at, at + Duration.FromHours(1), 7);
            if (without != PeriodQuantity.PrecipitationMm) builder.Add(PeriodQuantity.PrecipitationMm, at, at + Duration.FromHours(1), 0);
        }

        var series = builder.Build("made-up", "test", null, Now, FakeReader.Attribution, new ForecastCell(52.1, 4.3, null));
        for (var i = 0; i < times; i++) shares.Answered(series);
    }

    private sealed class Lines : ILogger<KnownShares>
    {
        public List<(LogLevel Level, string Quantity)> Told { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Told.Add(
                (logLevel, (string)((IReadOnlyList<KeyValuePair<string, object?>>)state!).Single(part => part.Key == "Quantity").Value!));
    }
}
