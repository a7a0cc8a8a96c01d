using CsCheck;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Series;

public sealed class ForecastSeriesReadingsTests
{
    private static readonly Instant Start = Instant.FromUtc(2031, 3, 2, 12, 0);

    private static Instant H(double hours) => Start + Duration.FromHours(hours);

    private static ForecastSeries Instants(InstantQuantity quantity, params (double Hour, double Value)[] points) =>
        Build(b => { foreach (var (hour, value) in points) b.Add(quantity, H(hour), value); });

    private static ForecastSeries Periods(PeriodQuantity quantity, params (double From, double To, double Value)[] periods) =>
        Build(b => { foreach (var (from, to, value) in periods) b.Add(quantity, H(from), H(to), value); });

    internal static ForecastSeries Build(Action<ForecastSeriesBuilder> fill)
    {
        var builder = new ForecastSeriesBuilder();
        fill(builder);
        return builder.Build(
            "fake",
            "test",
            null,
            Start,
            new Attribution("t", new Uri("https://example.org/"), "l"),
            new ForecastCell(0, 0, null));
    }

    [Fact]
    public void A_point_reads_as_the_feed_gave_it()
    {
        var reading = Instants(InstantQuantity.CloudAreaFraction, (0, 0.25), (1, 0.5)).At(InstantQuantity.CloudAreaFraction, H(1));

        Assert.Equal(new Reading(0.5, Quality.Direct, Duration.FromHours(1)), reading);
    }

    [Fact]
    public void Between_points_it_reads_on_the_straight_line_and_says_so()
    {
        var reading = Instants(InstantQuantity.CloudAreaFraction, (0, 0.2), (1, 0.6)).At(InstantQuantity.CloudAreaFraction, H(0.25));

        Assert.Equal(0.3, reading.Value!.Value, 12);
        Assert.Equal(Quality.Interpolated, reading.Quality);
        Assert.Equal(Duration.FromHours(1), reading.NativeStep);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(2.01)]
    public void Outside_the_points_it_is_unknown(double hour) =>
        Assert.Equal(
            Reading.Unknown,
            Instants(InstantQuantity.AirTemperatureC, (0, 1), (1, 2), (2, 3)).At(InstantQuantity.AirTemperatureC, H(hour)));

    [Fact]
    public void A_quantity_the_feed_does_not_have_is_unknown()
    {
        var series = Instants(InstantQuantity.AirTemperatureC, (0, 1), (1, 2));

        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.CloudAreaFraction, H(0)));
        Assert.Equal(Reading.Unknown, series.Over(PeriodQuantity.GustMps, new Interval(H(0), H(1))));
    }

    [Fact]
    public void One_missing_hour_stays_unknown()
    {
        var series = Instants(InstantQuantity.CloudAreaFraction, (0, 0.1), (1, 0.1), (3, 0.1), (4, 0.1));

        Assert.Null(series.At(InstantQuantity.CloudAreaFraction, H(2)).Value);
        Assert.Null(series.At(InstantQuantity.CloudAreaFraction, H(1.01)).Value);
        Assert.NotNull(series.At(InstantQuantity.CloudAreaFraction, H(3)).Value);
    }

    [Fact]
    public void The_seam_from_hourly_to_six_hourly_is_no_hole()
    {
        var reading = Instants(InstantQuantity.CloudAreaFraction, (0, 0), (1, 0), (7, 0.6), (13, 0.6))
            .At(InstantQuantity.CloudAreaFraction, H(4));

        Assert.Equal(0.3, reading.Value!.Value, 12);
        Assert.Equal(Duration.FromHours(6), reading.NativeStep);
    }

    [Fact]
    public void A_gap_wider_than_six_hours_is_unknown() =>
        Assert.Null(Instants(InstantQuantity.CloudAreaFraction, (0, 0), (7, 0), (14, 0)).At(InstantQuantity.CloudAreaFraction, H(3)).Value);

    [Theory]
    [InlineData(350, 10, 0.5, 0)]
    [InlineData(10, 350, 0.25, 5)]
    [InlineData(90, 180, 0.5, 135)]
    [InlineData(359, 359, 0.5, 359)]
    [InlineData(270, 90, 0.5, 0)]
    public void Wind_direction_goes_the_shorter_way_round(double from, double to, double share, double expected) =>
        Assert.Equal(
            expected, Instants(InstantQuantity.WindFromDeg, (0, from), (1, to)).At(InstantQuantity.WindFromDeg, H(share)).Value!.Value, 9);

    [Fact]
    public void An_amount_is_spread_by_overlap()
    {
        var series = Periods(PeriodQuantity.PrecipitationMm, (0, 1, 0.4), (1, 7, 6));

        var reading = series.Over(PeriodQuantity.PrecipitationMm, new Interval(H(0.5), H(3)));

        Assert.Equal(0.2 + 2.0, reading.Value!.Value, 12);
        Assert.Equal(Quality.Interpolated, reading.Quality);
        Assert.Equal(Duration.FromHours(6), reading.NativeStep);
        Assert.Equal(Quality.Direct, series.Over(PeriodQuantity.PrecipitationMm, new Interval(H(0), H(7))).Quality);
    }

    [Theory]
    [InlineData(PeriodQuantity.GustMps, 12)]
    [InlineData(PeriodQuantity.PrecipitationProbability, 0.7)]
    [InlineData(PeriodQuantity.ThunderProbability, 0.7)]
    public void Gusts_and_probabilities_read_as_their_maximum(PeriodQuantity quantity, double most) =>
        Assert.Equal(
            most, Periods(quantity, (0, 1, most / 2), (1, 2, most), (2, 3, most / 3)).Over(quantity, new Interval(H(0.5), H(2.5))).Value);

    [Theory]
    [InlineData(-0.5, 0.5)]
    [InlineData(0.5, 2.5)]
    [InlineData(3.5, 4.5)]
    [InlineData(5, 6)]
    public void A_period_that_is_not_wholly_covered_is_unknown(double from, double to) =>
        Assert.Equal(
            Reading.Unknown,
            Periods(PeriodQuantity.PrecipitationMm, (0, 1, 1), (2, 3, 1), (3, 4, 1))
                .Over(PeriodQuantity.PrecipitationMm, new Interval(H(from), H(to))));

    [Fact]
    public void A_period_without_end_is_unknown() =>
        Assert.Equal(Reading.Unknown, Periods(PeriodQuantity.GustMps, (0, 1, 1)).Over(PeriodQuantity.GustMps, new Interval(H(0), null)));

    [Fact]
    public void An_empty_period_reads_the_period_it_lies_in() =>
        Assert.Equal(7, Periods(PeriodQuantity.GustMps, (0, 1, 7)).Over(PeriodQuantity.GustMps, new Interval(H(0.5), H(0.5))).Value);

    [Fact]
    public void Amounts_of_parts_add_up_to_the_whole() =>
        Gen.Select(Gen.Double[0, 10].Array[1, 12], Gen.Double[0, 1]).Sample((amounts, cut) =>
        {
            var series = Periods(PeriodQuantity.PrecipitationMm, [.. amounts.Select((mm, i) => ((double)i, i + 1.0, mm))]);
            var middle = cut * amounts.Length;

            var first = series.Over(PeriodQuantity.PrecipitationMm, new Interval(H(0), H(middle))).Value!.Value;
            var second = series.Over(PeriodQuantity.PrecipitationMm, new Interval(H(middle), H(amounts.Length))).Value;

            return Math.Abs(amounts.Sum() - first - (second ?? 0)) < 1e-6;
        });

    [Fact]
    public void An_interpolated_value_lies_between_its_neighbours() =>
        Gen.Select(Gen.Double[-40, 40], Gen.Double[-40, 40], Gen.Double[0, 1]).Sample((a, b, share) =>
            Instants(InstantQuantity.AirTemperatureC, (0, a), (1, b)).At(InstantQuantity.AirTemperatureC, H(share)).Value is { } v
            && v >= Math.Min(a, b) - 1e-9 && v <= Math.Max(a, b) + 1e-9);

    /// <summary>
    /// Feeds with holes, seams from one step to another and walks that begin before the first value and end after the last.
    /// </summary>
    [Fact]
    public void A_walk_reads_exactly_what_single_readings_do() =>
        Gen.Select(
                Gen.Select(Gen.Int[0, 60], Gen.Double[0, 1]).Array[0, 40],
                Gen.Double[-10, 50],
                Gen.OneOf(Gen.Const(5), Gen.Const(7), Gen.Const(60), Gen.Const(180)),
                Gen.Int[0, 80])
            .Sample(
                (hours, from, stepMin, count) =>
                {
                    var distinct = hours
                        .DistinctBy(point => point.Item1)
                        .OrderBy(point => point.Item1)
                        .Select(point => ((double)point.Item1, point.Item2))
                        .ToArray();
                    var (instants, periods) = (
                        Instants(InstantQuantity.CloudAreaFraction, distinct),
                        Periods(
                            PeriodQuantity.PrecipitationMm,
                            [.. distinct.Zip(distinct.Skip(1), (a, b) => (a.Item1, b.Item2 > 0.2 ? b.Item1 : a.Item1 + 1, a.Item2))]));
                    var (start, step) = (H(from), Duration.FromMinutes(stepMin));
                    var (at, over) = (new double[count], new double[count]);
                    instants.Along(InstantQuantity.CloudAreaFraction, start, step, at);
                    periods.Along(PeriodQuantity.PrecipitationMm, start, step, over);

                    Assert.Equal(
                        Enumerable
                            .Range(0, count)
                            .Select(i => instants.At(InstantQuantity.CloudAreaFraction, start + step * i).Value ?? double.NaN),
                        at);
                    Assert.Equal(
                        Enumerable
                            .Range(0, count)
                            .Select(i =>
                                periods.Over(PeriodQuantity.PrecipitationMm, new Interval(start + step * i, start + step * (i + 1))).Value
                                ?? double.NaN),
                        over);
                },
                iter: 2000);
}
