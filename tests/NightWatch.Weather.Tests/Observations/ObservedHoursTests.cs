using NightWatch.Weather.Observations;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Observations;

public sealed class ObservedHoursTests
{
    private static readonly Instant Dusk = Instant.FromUtc(2027, 6, 4, 18, 0);
    private static readonly Interval Night = new(Dusk, Dusk + Duration.FromHours(4));

    [Fact]
    public void An_hour_is_as_the_nearest_report_saw_it_and_unknown_without_one()
    {
        var seen = ObservedHours.Over(null, [Report(-10, "OVC"), Report(25, "BKN"), Report(50, "FEW"), Report(200, "SCT", wet: true)], Night)!;

        Assert.Equal(1.0, Cloud(seen, 0));
        Assert.Equal(3 / 16.0, Cloud(seen, 1)!.Value, 12); // ten minutes before the hour beats thirty-five
        Assert.Null(Cloud(seen, 2));
        Assert.Equal((7 / 16.0, 0.2), (Cloud(seen, 3)!.Value, seen.Over(PeriodQuantity.PrecipitationMm, new Interval(At(180), At(240))).Value!.Value));
    }

    [Fact]
    public void Where_a_report_sees_no_low_cloud_the_high_cloud_is_the_feeds()
    {
        var seen = ObservedHours.Over(Later(total: 0.9, low: 0.9, medium: 0.1, high: 0.5), [Report(0, "CLR"), Report(60, "BKN")], Night)!;

        // By hand: layers that overlap at random, 1 - 0.9 · 0.5; the feed's low cloud was not there.
        Assert.Equal(0.55, Cloud(seen, 0)!.Value, 12);
        Assert.Equal(0.75, Cloud(seen, 1)!.Value, 12);
        Assert.Null(Cloud(ObservedHours.Over(null, [Report(0, "CLR")], Night)!, 0));
    }

    [Fact]
    public void Without_a_report_of_the_night_nothing_is_seen() => Assert.Null(ObservedHours.Over(Later(0, 0, 0, 0), [Report(-600, "FEW")], Night));

    private static Instant At(int minutes) => Dusk + Duration.FromMinutes(minutes);

    private static double? Cloud(ForecastSeries seen, int hour) => seen.At(InstantQuantity.CloudAreaFraction, At(60 * hour)).Value;

    private static AerodromeReport Report(int minutes, string cover, bool wet = false) =>
        new("FYWW", At(minutes), -22.5, 17.5, ObservedSky.Of([cover]), null, null, wet, false);

    private static ForecastSeries Later(double total, double low, double medium, double high)
    {
        var builder = new ForecastSeriesBuilder();
        for (var hour = 0; hour <= 5; hour++)
        {
            builder.Add(InstantQuantity.CloudAreaFraction, At(60 * hour), total).Add(InstantQuantity.LowCloudAreaFraction, At(60 * hour), low)
                .Add(InstantQuantity.MediumCloudAreaFraction, At(60 * hour), medium).Add(InstantQuantity.HighCloudAreaFraction, At(60 * hour), high);
        }

        return builder.Build("fake", "hand", At(900), At(900), new Attribution("Written by hand", new Uri("https://example.org/"), "none"), new ForecastCell(0, 0, null));
    }
}
