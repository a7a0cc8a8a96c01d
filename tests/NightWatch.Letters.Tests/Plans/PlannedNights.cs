using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>
/// Nights as the planner plans them, over the real sky and invented steady weather: an autumn new Moon above an invented salt pan.
/// </summary>
internal static class PlannedNights
{
    private static readonly LocalDate Night = new(2026, 4, 17);

    private static readonly DateTimeZone Windhoek = DateTimeZoneProviders.Tzdb["Africa/Windhoek"];

    /// <summary>Rises with the core and loses it over the top.</summary>
    public static Watch Watch { get; } = new()
    {
        Id = "rosa-pan",
        Subscriber = new Subscriber("Rosa Amakali", "rosa.amakali@example.org"),
        Site = new Site
        {
            Id = "pan",
            Name = "The White Pan",
            Position = new GeoPosition(-24.7553, 15.2905, 570),
            Zone = Windhoek,
            Horizon = new HorizonProfile([new(80, 1.5), new(120, 6), new(160, 2), new(220, 0.5)]),
        },
        Kit = new Kit { FocalLengthMm = 24, DewHeaterW = 4, DewHeaterBatteryWh = 80 },
        Move = new Move { Start = new Heading(135, 22), End = new Heading(175, 40), EaseIn = 0.1, EaseOut = 0.1, RailM = 1.2 },
    };

    public static NightPlan CoreLeavesTheFrame => Of(Watch);

    /// <summary>Plans a watch's night.</summary>
    /// <param name="watch">The watch.</param>
    /// <param name="dewPointC">Of air at 12 °C.</param>
    /// <param name="thunder">Probability, fraction.</param>
    /// <param name="isSparse">The feed gives neither gusts nor probabilities, as some do in some regions.</param>
    public static NightPlan Of(Watch watch, double dewPointC = 10, double thunder = 0, bool isSparse = false)
    {
        var noon = Night.At(new LocalTime(12, 0)).InZoneStrictly(Windhoek).ToInstant();
        return NightPlanner.Plan(new NightInputs
        {
            Watch = watch,
            Night = Night,
            Now = noon - Duration.FromHours(4),
            Weather = new PlaceWeather { Newest = Steady(noon, dewPointC, thunder, isSparse) },
            RainBefore = new RainBefore(0, 72, 72),
        });
    }

    private static ForecastSeries Steady(Instant noon, double dewPointC, double thunder, bool isSparse)
    {
        var builder = new ForecastSeriesBuilder();
        for (var hour = -12; hour < 36; hour++)
        {
            var at = noon + Duration.FromHours(hour);
            var end = at + Duration.FromHours(1);
            builder
                .Add(InstantQuantity.CloudAreaFraction, at, 0.04)
                .Add(InstantQuantity.AirTemperatureC, at, 12)
                .Add(InstantQuantity.DewPointC, at, dewPointC)
                .Add(InstantQuantity.WindMps, at, 0.5)
                .Add(InstantQuantity.FogAreaFraction, at, 0)
                .Add(InstantQuantity.VisibilityM, at, 30_000)
                .Add(PeriodQuantity.PrecipitationMm, at, end, 0)
                .Add(PeriodQuantity.PrecipitationProbability, at, end, isSparse ? null : 0)
                .Add(PeriodQuantity.GustMps, at, end, isSparse ? null : 2)
                .Add(PeriodQuantity.ThunderProbability, at, end, isSparse ? null : thunder);
        }

        return builder.Build(
            "met-norway", "mixed", noon - Duration.FromHours(6), noon - Duration.FromHours(5),
            new Attribution("Data from MET Norway", new Uri("https://api.met.no/"), "CC BY 4.0"), new ForecastCell(-24.7553, 15.2905, 570));
    }
}
