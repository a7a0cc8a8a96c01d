using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Time;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Photographers;
using NightWatch.Weather.Fake;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>Years of nights at many sites: forecast as it would have been, told as it would have been, and judged by what came.</summary>
/// <param name="seed">Of sites and weather.</param>
/// <param name="nightsASite">How many, from <see cref="FirstNight"/>.</param>
/// <param name="sites">How many.</param>
/// <param name="every">
/// Looks at every so many-th night; the sites begin on different ones. What came is worked out for all, so that persistence has its yesterday.
/// </param>
/// <param name="progress">Told after each site how many are done.</param>
internal sealed class YearsRun(int seed, int nightsASite, int sites, int every, Action<int> progress)
{
    public static readonly LocalDate FirstNight = new(2027, 1, 1);

    private readonly FakeWeather world = new(seed);
    private readonly HashSet<LocalDate> newMoons = NewMoons(nightsASite);

    /// <summary>Nights in so many years.</summary>
    public static int NightsOf(int years) => Period.DaysBetween(FirstNight, FirstNight.PlusYears(years));

    /// <summary>Every night that the sky allows, site by site and in order, whatever the number of threads.</summary>
    public IReadOnlyList<SimulatedNight> Run(CancellationToken stop)
    {
        var watches = SimulatedSites.Of(seed, sites);
        var sky = new SharedSky();
        var (bySite, done) = (new SimulatedNight[sites][], 0);
        Parallel.For(0, sites, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount }, site =>
        {
            bySite[site] = [.. OfSite(site, watches[site], sky, stop)];
            progress(Interlocked.Increment(ref done));
        });
        return [.. bySite.SelectMany(nights => nights)];
    }

    private IEnumerable<SimulatedNight> OfSite(int site, Watch watch, SharedSky shared, CancellationToken stop)
    {
        var weather = new SimulatedWeather(world, watch, shared);
        var before = new List<(LocalDate Night, bool Usable)>();
        for (var day = 0; day < nightsASite; day++)
        {
            stop.ThrowIfCancellationRequested();
            var night = FirstNight.PlusDays(day);
            var sky = weather.SkyOf(night);
            if (sky.Verdict.Probability.Basis == ProbabilityBasis.SkyAlone) continue;
            var dark = DarkOf(sky.Sky);
            var came = weather.TruthOf(night).Verdict.Class;
            if ((day + site) % every == 0)
            {
                var lived = Photographer.Live(watch, night, (at, told) => weather.PlanAt(at, night, dark, told));
                var morning = LocalClock.At(watch.Site.Zone, night, watch.Letters.MorningAt);
                yield return new SimulatedNight(
                    site, night, came, lived.Looks, lived.OnAtLast, lived.Letters, weather.DayCloud(night, morning), newMoons.Contains(night),
                    [.. Enumerable.Range(0, lived.Looks.Count).Select(lead => LastOver(before, night.PlusDays(-lead)))]);
            }

            before.Add((night, came != VerdictClass.NoGo));
            if (before.Count > Photographer.LeadNights + 1) before.RemoveAt(0);
        }
    }

    /// <summary>The hours of a night that bear on it: those in which any run of it must lie.</summary>
    public static Interval DarkOf(NightSky sky) => new(sky.AstronomicalNight[0].Start, sky.AstronomicalNight[^1].End);

    /// <summary>Of the last night before a day; at most four dark nights back, which spans the leads.</summary>
    private static bool? LastOver(List<(LocalDate Night, bool Usable)> before, LocalDate day) =>
        before.FindLastIndex(past => past.Night < day) is >= 0 and var last ? before[last].Usable : null;

    /// <summary>New Moon or the night either side (common practice, no source); by the date in UTC, which is near enough for a rule of thumb.</summary>
    private static HashSet<LocalDate> NewMoons(int nights)
    {
        var from = FirstNight.PlusDays(-2).AtMidnight().InUtc().ToInstant();
        var to = FirstNight.PlusDays(nights + 2).AtMidnight().InUtc().ToInstant();
        return
        [
            .. from phase in MoonPhases.Between(@from, to)
               where phase.Name == PhaseName.New
               from beside in Enumerable.Range(-1, 3)
               select phase.At.InUtc().Date.PlusDays(beside),
        ];
    }
}
