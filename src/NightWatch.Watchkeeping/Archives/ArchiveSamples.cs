using NightWatch.Planning.Chance;
using NightWatch.Planning.Samples;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Time;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Known;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>Makes of an archive what a chance is fitted on: what each look said, knowing nothing later, and what came.</summary>
/// <param name="watch">Whose limits.</param>
/// <param name="runs">What was forecast.</param>
/// <param name="came">The hours that came.</param>
/// <param name="look">Local time of the looks.</param>
/// <param name="sky">Kept between nights.</param>
internal sealed class ArchiveSamples(Watch watch, ArchivedForecastRuns runs, ForecastSeries came, LocalTime look, SharedSky sky)
{
    /// <summary>Every look at every night whose cloud came to be known, by night and lead, whatever the number of threads.</summary>
    /// <param name="lastLead">Looks from the day itself to so many nights ahead.</param>
    /// <param name="isPooled">Whether to ask more than the watch's own question.</param>
    /// <param name="stop">Stops it.</param>
    public IReadOnlyList<SampledLook> All(int lastLead, bool isPooled, CancellationToken stop)
    {
        var nights = ArchiveNights.Of(came, watch.Site.Zone);
        var found = new List<SampledLook>[nights.Count];
        Parallel.For(0, found.Length, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount },
            i => found[i] = Of(nights[i], lastLead, isPooled));
        return [.. found.SelectMany(night => night)];
    }

    private List<SampledLook> Of(LocalDate night, int lastLead, bool isPooled)
    {
        var span = NightSpan.Of(watch.Site.Zone, night);
        var asked = NightSamples.Of(
            NightEvaluation.InputsOf(watch, night, PlaceWeather.Unknown, ChanceBook.Shipped, span.Start, sky), sky.Ephemeris, isPooled);
        var all = new List<SampledLook>();
        if (asked.Dark is not { } dark || asked.Questions.IsEmpty || !CameHours.TellsCloud(came, dark)) return all;
        var usable = asked.Came(came.KeptAs(came.Id, span.End));
        for (var lead = 0; lead <= lastLead; lead++)
        {
            var known = runs.KnownAt(LocalClock.At(watch.Site.Zone, night.PlusDays(-lead), look));
            var cloud = known.Newest is { } newest ? DarkCloud.Of(CameHours.Cloud(newest, dark)) : null;
            foreach (var sample in asked.Look(known))
            {
                var isWatchs = asked.Questions[sample.Question].IsWatchs;
                all.Add(new SampledLook(night, lead, isWatchs, sample.Figures, usable[sample.Question], isWatchs ? cloud : null));
            }
        }

        return all;
    }
}
