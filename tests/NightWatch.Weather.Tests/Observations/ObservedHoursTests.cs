using NightWatch.Weather.Observations;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Observations;

public sealed class ObservedHoursTests
{
    private static readonly Instant Dusk = Instant.FromUtc(2027, 6, 4, 18, 0);
    private static readonly Interval Night = new(Dusk, Dusk + Duration.FromHours(4));

    [Fact]
    public void An_hour_is_as_the_nearest_report_saw_it_and_may_be_anything_without_one()
    {
        var seen = ObservedHours.Over(
            null, [Report(-10, "OVC"), Report(25, "BKN"), Report(50, "FEW"), Report(200, "SCT", wet: true)], Night, Night)!;

        Assert.Equal((1.0, 1.0), Cloud(seen, 0));
        Assert.Equal(3 / 16.0, Cloud(seen, 1).Best!.Value, 12); // ten minutes before the hour beats thirty-five
        Assert.Equal((0.0, 1.0), Cloud(seen, 2));
        Assert.Equal(7 / 16.0, Cloud(seen, 3).Worst!.Value, 12);
        Assert.Equal(0.2, seen.Best.Over(PeriodQuantity.PrecipitationMm, new Interval(At(180), At(240))).Value!.Value);
        Assert.Equal((1, 0), (seen.Missing, seen.Blind)); // 20:00; forty minutes are near enough at 22:00
    }

    [Fact]
    public void Cloud_that_a_station_cannot_see_is_there_in_the_worst_reading_only_and_no_feed_fills_it_in()
    {
        var seen = ObservedHours.Over(
            Later(total: 0.9),
            [Report(0, "CLR", Blind), Report(60, "SCT", Blind), Report(120, "OVC", Blind), Report(180, "///", Blind)],
            Night,
            Night)!;

        Assert.Equal((0.0, 1.0), Cloud(seen, 0));
        Assert.Equal((7 / 16.0, 1.0), Cloud(seen, 1));
        Assert.Equal((1.0, 1.0), Cloud(seen, 2));
        Assert.Equal((0.0, 1.0), Cloud(seen, 3));
        // The hour told by no cloud group and the one without a report are missing.
        Assert.Equal((2, 2, true), (seen.Blind, seen.Missing, seen.IsAutomatic));
    }

    [Fact]
    public void Without_a_report_of_the_night_nothing_is_seen() =>
        Assert.Null(ObservedHours.Over(Later(0), [Report(-600, "FEW")], Night, Night));

    [Fact]
    public void Later_hours_of_a_feed_are_read_twice_only_where_they_lack_an_hour()
    {
        var whole = SeenHours.Of(Later(0.3), Night, Night)!;
        var holed = SeenHours.Of(Later(0.3, without: 2), Night, Night)!;

        Assert.Equal((0, 0, false), (whole.Blind, whole.Missing, whole.IsAutomatic));
        Assert.Same(whole.Best, whole.Worst);
        Assert.Equal((1, (0.0, 1.0)), (holed.Missing, Cloud(holed, 2)));
        Assert.Equal((0.3, 0.3), Cloud(holed, 3));
    }

    [Fact]
    public void Of_the_dark_alone_it_is_counted_what_was_seen()
    {
        var dark = new Interval(At(70), At(110));
        AerodromeReport[] reports = [Report(0, "CLR", Blind), Report(60, "CLR", Blind), Report(120, "SKC")];

        var seen = ObservedHours.Over(null, reports, Night, dark)!;

        Assert.Equal((1, 0, true), (seen.Blind, seen.Missing, seen.IsAutomatic)); // 19:00 and 20:00 of 18:00 to 22:00
        Assert.Null(ObservedHours.Over(null, [reports[0]], Night, dark));
        Assert.Null(SeenHours.Of(Later(0.3), new Interval(At(600), At(900)), new Interval(At(660), At(720))));
    }

    private static readonly StationSight Whole = new(false, null);

    private static readonly StationSight Blind = new(true, 3810);

    private static Instant At(int minutes) => Dusk + Duration.FromMinutes(minutes);

    private static (double? Best, double? Worst) Cloud(SeenHours seen, int hour) =>
        (
            seen.Best.At(InstantQuantity.CloudAreaFraction, At(60 * hour)).Value,
            seen.Worst.At(InstantQuantity.CloudAreaFraction, At(60 * hour)).Value);

    private static AerodromeReport Report(int minutes, string cover, StationSight? sight = null, bool wet = false) =>
        new("FYWW", At(minutes), -22.5, 17.5, ObservedSky.Of([cover]), sight ?? Whole, null, null, wet, false);

    private static ForecastSeries Later(double total, int? without = null)
    {
        var builder = new ForecastSeriesBuilder();
        for (var hour = 0; hour <= 5; hour++)
        {
            if (hour != without) builder.Add(InstantQuantity.CloudAreaFraction, At(60 * hour), total);
            builder.Add(InstantQuantity.WindMps, At(60 * hour), 2);
        }

        return builder.Build(
            "fake",
            "hand",
            At(900),
            At(900),
            new Attribution("Written by hand", new Uri("https://example.org/"), "none"),
            new ForecastCell(0, 0, null));
    }
}
