using System.Diagnostics;
using System.Globalization;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;

namespace NightWatch.Bench.Sky;

/// <summary>All events and windows of a million site-nights, timed, and the accuracy of a sample of the very same answers.</summary>
internal static class MillionNights
{
    private const double MinAltitudeDeg = 10;

    public static int Run(string[] args)
    {
        var total = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1_000_000;
        var nights = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1000;
        var work = new SiteNights(total / nights, nights, seed: 1);
        Warm(work);

        var sampleEvery = Math.Max(1, total / 2000);
        var samples = new Sample[work.Nights.Length][];
        var ephemeris = new SkyEphemeris(8192);
        var cpu = Cpu();
        var clock = Stopwatch.StartNew();
        Parallel.For(0, work.Nights.Length, night => samples[night] = Night(work, night, ephemeris, sampleEvery));
        clock.Stop();
        cpu = Cpu() - cpu;

        var seconds = clock.Elapsed.TotalSeconds;
        Print(
            $"site-nights            {(long)work.Sites.Length * work.Nights.Length,12:N0}  ({work.Sites.Length:N0} sites x " +
            $"{work.Nights.Length:N0} nights, 2000-2050)");
        Print($"seconds                {seconds,12:F2}  on {Environment.ProcessorCount} processors");
        Print($"processor seconds      {cpu.TotalSeconds,12:F2}  {cpu.TotalMicroseconds / total:F2} microseconds a site-night");
        return AccuracyOfSample.Report([.. samples.SelectMany(sample => sample)]);
    }

    public static int RunOneCore()
    {
        var work = new SiteNights(sites: 200, nights: 500, seed: 2);
        Warm(work);
        var ephemeris = new SkyEphemeris(8192);
        var count = work.Sites.Length * work.Nights.Length;
        Measure(count, "with its share of the fits", () => All(work, ephemeris));
        var before = GC.GetAllocatedBytesForCurrentThread();
        Measure(count, "with the fits at hand", () => All(work, ephemeris));
        Print($"bytes allocated a site-night {(GC.GetAllocatedBytesForCurrentThread() - before) / (double)count:F1}");
        return 0;
    }

    private static void All(SiteNights work, SkyEphemeris ephemeris)
    {
        for (var night = 0; night < work.Nights.Length; night++) Night(work, night, ephemeris, int.MaxValue);
    }

    // Processor time, so that what else the machine does matters less.
    private static void Measure(int count, string what, Action work)
    {
        var cpu = Cpu();
        work();
        Print($"microseconds a site-night on one core, {what}: {(Cpu() - cpu).TotalMicroseconds / count:F3}");
    }

    private static TimeSpan Cpu() => Process.GetCurrentProcess().TotalProcessorTime;

    // Long enough for the compiler's second tier to take over.
    private static void Warm(SiteNights work)
    {
        var ephemeris = new SkyEphemeris();
        var clock = Stopwatch.StartNew();
        for (var night = 0; clock.Elapsed < TimeSpan.FromSeconds(1); night = (night + 1) % work.Nights.Length)
            Night(work, night, ephemeris, int.MaxValue);
    }

    private static Sample[] Night(SiteNights work, int night, SkyEphemeris ephemeris, int sampleEvery)
    {
        List<Sample>? samples = null;
        for (var i = 0; i < work.Sites.Length; i++)
        {
            var site = work.Sites[i];
            var span = NightSpan.Of(site.Zone, work.Nights[night]);
            var fit = ephemeris.For(span.Start);
            NightFigures.Compute(
                fit, new Observer(site.Position), fit.ArgumentOf(span.Start), fit.ArgumentOf(span.End), site.Subject, MinAltitudeDeg,
                out var figures);
            if ((night * (long)work.Sites.Length + i) % sampleEvery == 0 && sampleEvery != int.MaxValue)
                (samples ??= []).Add(new(site, fit, figures, MinAltitudeDeg));
        }

        return samples?.ToArray() ?? [];
    }

    private static void Print(string line) => Console.WriteLine(line);

    internal sealed record Sample(SiteNights.Site Site, DayFit Fit, NightFigures Figures, double MinAltitudeDeg);
}
