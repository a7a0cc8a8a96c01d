using NightWatch.Planning.Chance;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Tests.HandMade;

/// <summary>
/// An invented winter night in Namibia with round clock times, so that plans can be checked by hand. UTC+2, noon is 10:00 UTC.
/// </summary>
internal sealed record DesertNight
{
    public static LocalDate Date { get; } = new(2026, 7, 14);

    public static DateTimeZone Zone { get; } = DateTimeZoneProviders.Tzdb["Africa/Windhoek"];

    public static Instant Noon { get; } = Clock(12, 0);

    public Watch Watch { get; init; } = new()
    {
        Id = "core-at-the-flats",
        Subscriber = new Subscriber("Ilse", "ilse@example.org"),
        // Packs and cards for the longest night: what they fail in has tests of its own.
        Kit = new Kit { BatteriesWh = [60, 60], CardGb = 512 },
        Site = new Site { Id = "kestrel-flats", Name = "Kestrel Flats", Position = new GeoPosition(-24.6, 15.9, 1100), Zone = Zone },
    };

    public Instant Now { get; init; } = Clock(8, 0);

    public Instant Issued { get; init; } = Clock(6, 0);

    public HourlyWeather? Weather { get; init; } = new();

    public IReadOnlyList<HourlyWeather> Members { get; init; } = [];

    public IReadOnlyList<HourlyWeather> EarlierRuns { get; init; } = [];

    public HourlyWeather? SecondOpinion { get; init; }

    public bool HasCome { get; init; }

    public VerdictClass? LastTold { get; init; }

    public ChanceBook Chances { get; init; } = ChanceBook.Shipped;

    public double? AntecedentRainMm { get; init; } = 0;

    public IReadOnlyList<Interval> AstronomicalNight { get; init; } = [new Interval(Clock(19, 20), Clock(30, 10))];

    public IReadOnlyList<Interval> SubjectWindows { get; init; } = [new Interval(Clock(18, 30), Clock(28, 0))];

    public IReadOnlyList<Instant> Moonrises { get; init; } = [];

    /// <summary>Magnitudes by hours after local midnight of the date.</summary>
    public Func<double, double> MoonBrightening { get; init; } = _ => 0;

    /// <summary>An instant by local clock on the date; hours above 24 are the next morning.</summary>
    public static Instant Clock(int hour, int minute) =>
        Zone.AtStrictly(Date.AtMidnight()).ToInstant() + Duration.FromHours(hour) + Duration.FromMinutes(minute);

    public NightPlan Plan()
    {
        var grid = NightPlanner.GridOf(Sky);
        return NightPlanner.Plan(
            new NightInputs
            {
                Watch = Watch,
                Night = Date,
                Now = Now,
                Weather = new PlaceWeather
                {
                    Newest = Series(Weather),
                    Members = [.. Members.Select(Series).OfType<ForecastSeries>()],
                    EarlierRuns = [.. EarlierRuns.Select(Series).OfType<ForecastSeries>()],
                    SecondOpinion = Series(SecondOpinion),
                },
                Chances = Chances,
                HasCome = HasCome,
                LastTold = LastTold,
                RainBefore = AntecedentRainMm is { } mm ? new RainBefore(mm, 72, 72) : new RainBefore(null, 31, 72),
            },
            Sky, Glow, grid, Above(grid), at => at < Clock(18, 0) || at > Clock(31, 30) ? 30 : -20);
    }

    /// <summary>What the plan found about one factor.</summary>
    public Reason Found(Factor factor) => Plan().Verdict.Reasons.Single(reason => reason.Factor == factor);

    public NightSky Sky =>
        new()
        {
            Night = Date,
            Zone = Zone,
            Span = new Interval(Noon, Noon + Duration.FromHours(24)),
            Sun = new SunEvents(
                SunState.Normal, Clock(18, 0), Clock(18, 25), Clock(18, 52), Clock(19, 20), Clock(30, 10), Clock(30, 38), Clock(31, 5),
                Clock(31, 30), Clock(24, 45)),
            Moon = new MoonEvents(Moonrises, [], 0.02, -40, 180),
            Subject = new SubjectEvents(SubjectState.Normal, Clock(17, 30), Clock(29, 0), Clock(23, 15), 84),
            DarkWindows = AstronomicalNight,
            SubjectWindows = SubjectWindows,
            ShootingWindows = [],
            AstronomicalNight = AstronomicalNight,
        };

    private ForecastSeries? Series(HourlyWeather? weather) => weather?.Series(Noon, Issued);

    private SiteSkyGlow Glow => SiteSkyGlow.Of(Watch.Site.Position, 21.8, []);

    /// <summary>The core stands still in the south; only the Moon's light matters to the verdict.</summary>
    private SkyTrack Above(NightGrid grid)
    {
        var subject = new Horizontal(60, 180);
        var dark = Glow.Nanolamberts(60, 180);
        var steps = Enumerable.Range(0, grid.Count).Select(cell =>
        {
            var light = MoonBrightening((grid.At(cell) - Clock(0, 0)).TotalHours);
            var moon = new MoonSighting(new Horizontal(light > 0 ? 20 : -20, 90), 384_400, 0.26, 160, 0.02);
            return new SkyStep(-20, moon, subject, new SkyLight(dark, dark * (Math.Pow(10, 0.4 * light) - 1), 0));
        });
        return new SkyTrack([.. steps], [new SiderealTrack(subject, Watch.Site.Position.LatitudeDeg)]);
    }
}
