using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Tests.HandMade;

/// <summary>An hourly forecast written down by hand: one value an hour from noon to noon. Null is unknown.</summary>
internal sealed record HourlyWeather
{
    public const int Hours = 25;

    public double?[] Cloud { get; init; } = All(0.05);

    public double?[] Rain { get; init; } = All(0);

    public double?[] RainProbability { get; init; } = All(0.02);

    public double?[] Gust { get; init; } = All(3);

    public double?[] Wind { get; init; } = All(2);

    public double?[] Fog { get; init; } = All(0);

    public double?[] Thunder { get; init; } = All(0);

    public double?[] AirC { get; init; } = All(12);

    public double?[] DewPointC { get; init; } = All(0);

    /// <summary>Hours between values; periods are as long.</summary>
    public int Step { get; init; } = 1;

    public static double?[] All(double? value) => [.. Enumerable.Repeat(value, Hours)];

    /// <summary>One value, but another in some hours after noon, last excluded.</summary>
    public static double?[] But(double? value, int from, int to, double? there) =>
        [.. Enumerable.Range(0, Hours).Select(hour => hour >= from && hour < to ? there : value)];

    public ForecastSeries Series(Instant noon, Instant issued)
    {
        var builder = new ForecastSeriesBuilder();
        for (var hour = 0; hour < Hours; hour += Step)
        {
            var at = noon + Duration.FromHours(hour);
            var end = at + Duration.FromHours(Step);
            builder
                .Add(InstantQuantity.CloudAreaFraction, at, Cloud[hour])
                .Add(InstantQuantity.WindMps, at, Wind[hour])
                .Add(InstantQuantity.FogAreaFraction, at, Fog[hour])
                .Add(InstantQuantity.AirTemperatureC, at, AirC[hour])
                .Add(InstantQuantity.DewPointC, at, DewPointC[hour])
                .Add(PeriodQuantity.PrecipitationMm, at, end, Rain[hour] * Step)
                .Add(PeriodQuantity.PrecipitationProbability, at, end, RainProbability[hour])
                .Add(PeriodQuantity.GustMps, at, end, Gust[hour])
                .Add(PeriodQuantity.ThunderProbability, at, end, Thunder[hour]);
        }

        return builder.Build(
            "fake",
            "hand-made",
            issued,
            issued,
            new Attribution("Written by hand", new Uri("https://example.org/"), "none"),
            new ForecastCell(0, 0, null));
    }
}
