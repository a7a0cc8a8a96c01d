using BenchmarkDotNet.Attributes;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Bench.Sky;

/// <summary>What a night is made of, piece by piece.</summary>
[MemoryDiagnoser]
public class SkyParts
{
    private readonly SkyEphemeris ephemeris = new();
    private readonly GeoPosition place = new(-23.57, 15.03, 1700);
    private readonly DateTimeZone zone = DateTimeZoneProviders.Tzdb["Africa/Windhoek"];
    private readonly LocalDate night = new(2026, 8, 12);
    private readonly Subject core = new Subject.GalacticCore();
    private readonly TerrestrialTime tt = new(9720.25);
    private readonly int date = 20677;
    private readonly DayFit fit = new(20677);

    [Benchmark(Description = "Sun from the series")]
    public double SunSeries() => ApparentSun.IcrsKm(tt).X;

    [Benchmark(Description = "Moon from the series")]
    public double MoonSeries() => ApparentMoon.IcrsKm(tt).X;

    [Benchmark(Description = "fit of one date")]
    public object Fit() => new DayFit(date);

    [Benchmark(Description = "Moon's limb from a fit")]
    public double Limb() => AltitudeCurve.OfUpperLimb(fit.Moon, new Observer(place), ApparentMoon.RadiusKm).At(0.1).Value;

    [Benchmark(Description = "local noon to local noon")]
    public Interval Span() => NightSpan.Of(zone, night);

    [Benchmark(Description = "a night's figures, fit at hand")]
    public double Figures()
    {
        var span = NightSpan.Of(zone, night);
        var day = ephemeris.For(span.Start);
        NightFigures.Compute(
            day,
            new Observer(place),
            day.ArgumentOf(span.Start),
            day.ArgumentOf(span.End),
            SubjectDirection.Icrs(core),
            10,
            out var figures);
        return figures.Midnight;
    }

    [Benchmark(Description = "a night told, shared ephemeris")]
    public NightSky Told() => NightSky.Of(place, zone, night, core, ephemeris: ephemeris);

    [Benchmark(Description = "a night told, on its own")]
    public NightSky Alone() => NightSky.Of(place, zone, night, core);
}
