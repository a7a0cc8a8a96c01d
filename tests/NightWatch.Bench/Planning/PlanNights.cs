using System.Diagnostics;
using System.Globalization;
using NightWatch.Planning.Nights;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Bench.Planning;

/// <summary>
/// One core's time for everything after the sky's events: light of the sky at every step, conditions, run, plan, verdict.
/// </summary>
internal static class PlanNights
{
    /// <summary>Each night is planned so often and its quickest time counts: other work on the core only ever makes it longer.</summary>
    private const int Repeats = 5;

    public static int Run(string[] args)
    {
        var nights = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2000;
        var watches = BenchWatches.Make(nights);
        var ephemeris = new SkyEphemeris();
        var times = new List<double>();
        var (still, moved) = (new List<double>(), new List<double>());
        long bytes = 0;
        for (var i = 0; i < nights; i++)
        {
            var (watch, series, glow) = watches[i];
            var site = watch.Site;
            var inputs = Inputs(watch, BenchWatches.First, series, glow);
            var sky = NightSky.Of(
                site.Position, site.Zone, inputs.Night, watch.Subject, watch.Limits.MinAltitudeDeg, site.Horizon, ephemeris);
            var grid = NightPlanner.GridOf(sky);
            var above = new SiteSky(site.Position, sky.Span, ephemeris);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var quickest = double.PositiveInfinity;
            for (var repeat = 0; repeat < Repeats; repeat++)
            {
                var start = Stopwatch.GetTimestamp();
                var plan = NightPlanner.Plan(
                    inputs, sky, glow, grid, SkyTrack.Of(above, watch.Subject, glow, grid), at => above.SunAt(at).AltitudeDeg);
                quickest = Math.Min(quickest, Stopwatch.GetElapsedTime(start).TotalMicroseconds);
                GC.KeepAlive(plan);
            }

            times.Add(quickest);
            (watch.Move is null ? still : moved).Add(quickest);
            bytes += (GC.GetAllocatedBytesForCurrentThread() - before) / Repeats;
        }

        times.RemoveRange(0, nights / 4); // compiled and warm by then; medians hold where other work takes the core
        times.Sort();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"median {times[times.Count / 2]:0} us, mean {times.Average():0} us, 99th percentile {times[times.Count * 99 / 100]:0} " +
                $"us a watch-night; {bytes / nights / 1024} kB allocated each"));
        Console.WriteLine(FormattableString.Invariant($"still cameras: {Spread(still)}; moved: {Spread(moved)}"));
        return 0;
    }

    private static string Spread(List<double> times)
    {
        times.RemoveRange(0, times.Count / 4);
        times.Sort();
        return FormattableString.Invariant(
            $"median {times[times.Count / 2]:0} us, mean {times.Average():0} us, 90th percentile {times[times.Count * 9 / 10]:0} us");
    }

    private static NightInputs Inputs(Watch watch, LocalDate night, Weather.Series.ForecastSeries series, SiteSkyGlow glow) => new()
    {
        Watch = watch,
        Night = night,
        Now = BenchWatches.Now,
        Weather = new Weather.Known.PlaceWeather { Newest = series },
        Glow = glow,
        RainBefore = new RainBefore(4, 72, 72),
    };
}
