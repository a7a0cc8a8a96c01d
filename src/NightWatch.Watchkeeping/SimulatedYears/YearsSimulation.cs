using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Photographers;
using NightWatch.Weather.Fake;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>Years of nights at many sites: forecast as it would have been, told as it would have been, and judged by what came.</summary>
/// <param name="climate">Of the weather, at all sites.</param>
/// <param name="seed">Of sites and weather.</param>
/// <param name="nightsASite">How many, from <see cref="FirstNight"/>.</param>
/// <param name="sites">How many.</param>
/// <param name="every">Looks at every so many-th night; the sites begin on different ones.</param>
/// <param name="members">Of the ensemble; 0: earlier runs alone.</param>
/// <param name="progress">Told after each site how many are done.</param>
internal sealed class YearsSimulation(
    ClimateKind climate, int seed, int nightsASite, int sites, int every, int members, Action<int> progress)
{
    public static readonly LocalDate FirstNight = new(2027, 1, 1);

    private readonly FakeWeather world = new(seed, climate);

    /// <summary>Nights in so many years.</summary>
    public static int NightsOf(int years) => Period.DaysBetween(FirstNight, FirstNight.PlusYears(years));

    /// <summary>Every night that the sky allows, site by site and in order, whatever the number of threads.</summary>
    public IReadOnlyList<SimulatedNight> Run(CancellationToken stop)
    {
        var watches = SimulatedSites.Of(seed, sites);
        var sky = new SharedSky();
        var (bySite, done) = (new SimulatedNight[sites][], 0);
        Parallel.For(
            0,
            sites,
            new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount },
            site =>
            {
                bySite[site] = [.. OfSite(site, watches[site], sky, stop)];
                progress(Interlocked.Increment(ref done));
            });
        return [.. bySite.SelectMany(nights => nights)];
    }

    private IEnumerable<SimulatedNight> OfSite(int site, Watch watch, SharedSky shared, CancellationToken stop)
    {
        var weather = new SimulatedWeather(world, watch, shared, members);
        for (var day = 0; day < nightsASite; day++)
        {
            stop.ThrowIfCancellationRequested();
            if ((day + site) % every != 0) continue;
            var night = FirstNight.PlusDays(day);
            var sky = weather.SkyOf(night);
            if (sky.Verdict.Probability.Basis == ProbabilityBasis.SkyAlone) continue;
            var dark = DarkOf(sky.Sky);
            var came = weather.TruthOf(night).Verdict.Class;
            var lived = Photographer.Live(watch, night, (at, told) => weather.PlanAt(at, night, dark, told));
            yield return new SimulatedNight(
                site, night, came, [.. Enumerable.Range(0, Photographer.LeadNights + 1).Select(lead => weather.LookAt(lead, night, dark))],
                new LetterCourse(lived.Letters, lived.Flips, lived.EverOn, lived.OnAtLast, came != VerdictClass.NoGo));
        }
    }

    /// <summary>The hours of a night that bear on it: those in which any run of it must lie.</summary>
    public static Interval DarkOf(NightSky sky) => new(sky.AstronomicalNight[0].Start, sky.AstronomicalNight[^1].End);
}
