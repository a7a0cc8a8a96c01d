using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using NightWatch.Planning.Nights;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;
using NodaTime.TimeZones;

namespace NightWatch.Bench.Forecasts;

/// <summary>
/// The whole evaluation from stored answers: unpack, read, sky, conditions, plan, verdict; time by stage and the memory it takes.
/// </summary>
internal static class TenThousandWatches
{
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 4, 12, 7);

    private static readonly string[] Stages =
    ["answers unpacked and read", "town glow of the site", "night, windows, sky along it", "run, conditions, plan, verdict"];

    public static int Run(string[] args)
    {
        var numbers = args.Select(arg => int.Parse(arg, CultureInfo.InvariantCulture))
            .Concat(new[] { 10_000, 7, 0, 0 }.Skip(args.Length))
            .ToArray();
        var (watches, nights, earlier, members) = (numbers[0], numbers[1], numbers[2], numbers[3]);
        var bodies = new StoredBodies(Now, different: 200, members);
        var ephemeris = new SkyEphemeris();
        for (var i = 0; i < 40; i++) Evaluate(WatchOf(i), i, nights, earlier, bodies, ephemeris, new Tally());

        var (total, memory, done, next) = (new Tally(), new List<double>(), 0, 0);
        var gate = new Lock();
        var (cpu, allocated, clock) = (Cpu(), GC.GetTotalAllocatedBytes(), Stopwatch.StartNew());
        Parallel.For(0, watches, () => new Tally(), (i, _, tally) =>
        {
            Evaluate(WatchOf(i), i, nights, earlier, bodies, ephemeris, tally);
            var at = Interlocked.Increment(ref done);
            if (at * 10L / watches > Volatile.Read(ref next))
            {
                lock (gate)
                {
                    next = (int)(at * 10L / watches);
                    memory.Add(Environment.WorkingSet / 1e6);
                }
            }

            return tally;
        },
        tally =>
        {
            lock (gate) total.Add(tally);
        });
        clock.Stop();
        Report(
            watches, nights, earlier, members, bodies, total, memory, clock.Elapsed, Cpu() - cpu, GC.GetTotalAllocatedBytes() - allocated);
        return 0;
    }

    private static void Evaluate(Watch watch, int number, int nights, int earlier, StoredBodies bodies, SkyEphemeris ephemeris, Tally tally)
    {
        var stage = Stopwatch.GetTimestamp();
        var series = bodies.Forecast(number, Now);
        var runs = Enumerable
            .Range(1, earlier)
            .Select(back => bodies.Forecast(number + back, Now - back * Duration.FromHours(6)))
            .ToImmutableArray();
        var ensemble = bodies.Ensemble(number);
        tally.Lap(0, ref stage);
        var site = watch.Site;
        var glow = SiteSkyGlow.Of(site.Position, site.MeasuredSkyBrightness);
        tally.Lap(1, ref stage);
        var today = Now.InZone(site.Zone).Date;
        for (var ahead = 0; ahead < nights; ahead++)
        {
            var inputs = new NightInputs
            {
                Watch = watch,
                Night = today.PlusDays(ahead),
                Now = Now,
                Weather = new PlaceWeather { Newest = series, EarlierRuns = runs, Members = ensemble },
                Glow = glow,
                RainBefore = RainLedger.Antecedent(series, [], Now),
            };
            // The two halves of NightPlanner.Plan, so that each can be timed.
            var sky = NightSky.Of(
                site.Position, site.Zone, inputs.Night, watch.Subject, watch.Limits.MinAltitudeDeg, site.Horizon, ephemeris);
            var grid = NightPlanner.GridOf(sky);
            var above = new SiteSky(site.Position, sky.Span, ephemeris);
            var track = SkyTrack.Of(above, watch.Subject, glow, grid);
            tally.Lap(2, ref stage);
            var plan = NightPlanner.Plan(inputs, sky, glow, grid, track, at => above.SunAt(at).AltitudeDeg);
            tally.Lap(3, ref stage);
            tally.Count(plan.Verdict.Class);
        }
    }

    private static Watch WatchOf(int number)
    {
        var random = new Random(number);
        // The places of the zone database between the polar circles, moved by up to 3 degrees.
        var places = TzdbDateTimeZoneSource.Default.ZoneLocations!.Where(place => Math.Abs(place.Latitude) < 60).ToArray();
        var place = places[random.Next(places.Length)];
        return new Watch
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"watch-{number}"),
            Subscriber = new Subscriber("Bench", "bench@example.org"),
            Site = new Site
            {
                Id = "site",
                Name = "Site",
                Zone = DateTimeZoneProviders.Tzdb[place.ZoneId],
                Ground = (GroundKind)(number % Enum.GetValues<GroundKind>().Length),
                Position = new GeoPosition(
                    place.Latitude + random.NextDouble() * 6 - 3,
                    Math.IEEERemainder(place.Longitude + random.NextDouble() * 6 - 3, 360),
                    random.NextDouble() * 2500),
                Horizon = new HorizonProfile([new(60, 2), new(150, 5), new(240, 1)]),
            },
            Subject = number % 3 == 0 ? new Subject.Stars() : new Subject.GalacticCore(),
            Move = new Move { Start = new(120, 20), End = new(170, 35), EaseIn = 0.1, RailM = 1.2 },
            Kit = new Kit { DewHeaterW = 6, DewHeaterBatteryWh = 74, BatteriesWh = [99, 99], CardGb = 256 },
        };
    }

    private static TimeSpan Cpu() => Process.GetCurrentProcess().TotalProcessorTime;

    private static void Report(
        int watches,
        int nights,
        int earlier,
        int members,
        StoredBodies bodies,
        Tally total,
        List<double> memory,
        TimeSpan wall,
        TimeSpan cpu,
        long allocated)
    {
        var evaluations = (double)watches * nights;
        var (plain, packed) = bodies.SizeKb;
        Print(
            $"watches x nights         {watches:N0} x {nights}, each with {1 + earlier} stored runs of {plain:F0} kB JSON ({packed:F1} " +
            $"kB kept) and {members} members");
        Print($"seconds                  {wall.TotalSeconds,8:F1} on {Environment.ProcessorCount} processors");
        Print($"processor seconds        {cpu.TotalSeconds,8:F1}, {cpu.TotalMilliseconds / evaluations:F3} ms an evaluation");
        for (var i = 0; i < Stages.Length; i++) Print($"  {Stages[i],-31}{100.0 * total.Ticks[i] / total.Ticks.Sum(),5:F1} %");
        Print($"allocated                {allocated / evaluations / 1000,8:F1} kB an evaluation");
        Print(
            $"working set              {string.Join(", ", memory.Select(mb => mb.ToString("F0", CultureInfo.InvariantCulture)))} MB by " +
            $"tenths; at most {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:F0} MB");
        Print($"verdicts                 {total.Verdicts[2]:N0} go, {total.Verdicts[1]:N0} marginal, {total.Verdicts[0]:N0} no-go");
    }

    private static void Print(string line) => Console.WriteLine(line);

    /// <summary>One thread's.</summary>
    private sealed class Tally
    {
        public long[] Ticks { get; } = new long[Stages.Length];

        public int[] Verdicts { get; } = new int[3];

        public void Lap(int stage, ref long since)
        {
            var now = Stopwatch.GetTimestamp();
            Ticks[stage] += now - since;
            since = now;
        }

        public void Count(VerdictClass verdict) => Verdicts[(int)verdict]++;

        public void Add(Tally other)
        {
            for (var i = 0; i < Ticks.Length; i++) Ticks[i] += other.Ticks[i];
            for (var i = 0; i < Verdicts.Length; i++) Verdicts[i] += other.Verdicts[i];
        }
    }
}
