using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Series;

public sealed class LaterHoursTests
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 6, 4, 12, 0);
    private static readonly Interval Night = new(Noon + Duration.FromHours(6), Noon + Duration.FromHours(12));

    [Fact]
    public void An_hour_is_taken_from_the_newest_run_that_speaks_of_it()
    {
        // The evening's run, one of midnight that knows no past, and one of the next day that does.
        var runs = new[]
        {
            Run(issued: 6, first: 6, last: 30, cloud: 0.1),
            Run(issued: 10, first: 10, last: 30, cloud: 0.5),
            Run(issued: 29, first: 9, last: 30, cloud: 0.9),
        };

        var later = LaterHours.Of(runs, Night)!;

        Assert.Equal([0.1, 0.1, 0.1, 0.9, 0.9, 0.9], Hours(later, 6, 12));
        Assert.Equal([0.1, 0.1, 0.1, 0.1, 0.5, 0.5], Hours(LaterHours.Of(runs[..2], Night)!, 6, 12));
    }

    [Fact]
    public void An_hour_far_ahead_of_its_run_is_a_forecast_and_stays_unknown()
    {
        var later = LaterHours.Of([Run(issued: 4, first: 4, last: 30, cloud: 0.2)], Night)!;

        Assert.Equal([0.2, 0.2, 0.2, 0.2, 0.2, null], Hours(later, 6, 12)); // six hours after 16:00 is 22:00
        Assert.Null(LaterHours.Of([Run(issued: -8, first: -8, last: 30, cloud: 0.2)], Night));
        Assert.Null(LaterHours.Of([], Night));
    }

    [Fact]
    public void Rain_of_six_hours_is_shared_out_over_its_hours()
    {
        var builder = new ForecastSeriesBuilder().Add(PeriodQuantity.PrecipitationMm, At(6), At(12), 3.0);
        for (var hour = 6; hour <= 13; hour++) builder.Add(InstantQuantity.CloudAreaFraction, At(hour), 0.4);
        var run = builder.Build("fake", "hand", At(14), At(14), Source, new ForecastCell(0, 0, null));

        Assert.Equal(0.5, LaterHours.Of([run], Night)!.Over(PeriodQuantity.PrecipitationMm, new Interval(At(7), At(8))).Value!.Value, 12);
    }

    [Fact]
    public void A_run_tells_of_a_span_only_with_every_hour_of_it()
    {
        Assert.True(LaterHours.Tells(Run(issued: 30, first: 0, last: 30, cloud: 0), Night));
        Assert.False(LaterHours.Tells(Run(issued: 30, first: 8, last: 30, cloud: 0), Night));
        Assert.False(LaterHours.Tells(Run(issued: 4, first: 0, last: 30, cloud: 0), Night));
    }

    private static Attribution Source { get; } = new("Written by hand", new Uri("https://example.org/"), "none");

    private static Instant At(int hour) => Noon + Duration.FromHours(hour);

    private static ForecastSeries Run(int issued, int first, int last, double cloud)
    {
        var builder = new ForecastSeriesBuilder();
        for (var hour = first; hour <= last; hour++) builder.Add(InstantQuantity.CloudAreaFraction, At(hour), cloud);
        return builder.Build("fake", "hand", At(issued), At(issued), Source, new ForecastCell(0, 0, null));
    }

    private static double?[] Hours(ForecastSeries series, int from, int to) =>
        [.. Enumerable.Range(from, to - from).Select(hour => series.At(InstantQuantity.CloudAreaFraction, At(hour)).Value)];
}
