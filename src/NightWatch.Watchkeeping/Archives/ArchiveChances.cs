using System.Collections.Concurrent;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Photographers;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>The chances by which the nights of an archive are looked at.</summary>
/// <param name="priorFor">By night; the same object for many nights.</param>
/// <param name="learn">What all nights teach on a prior, each in its turn; null: nothing is learnt.</param>
internal sealed class ArchiveChances(Func<LocalDate, ChancePrior> priorFor, Func<ChancePrior, ArchiveLearning>? learn = null)
{
    private readonly ConcurrentDictionary<ChancePrior, Lazy<ArchiveLearning>> learnt = new();

    /// <summary>The prior that comes with the program, and nothing learnt.</summary>
    public static ArchiveChances Shipped { get; } = new(_ => ChancePrior.Shipped);

    /// <summary>Makes them for an archive.</summary>
    /// <param name="choice">The prior.</param>
    /// <param name="isLearning">Whether the nights that are over teach.</param>
    /// <param name="watch">Whose nights teach.</param>
    /// <param name="usual">Whose nights a prior is refitted on: <see cref="ArchiveWatch"/>.</param>
    /// <param name="runs">What was forecast.</param>
    /// <param name="came">The hours that came.</param>
    /// <param name="look">Local time of the looks.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>Null: the archive is too short to leave two months out of it.</returns>
    public static ArchiveChances? Of(
        PriorChoice choice, bool isLearning, Watch watch, Watch usual, ArchivedForecastRuns runs, ForecastSeries came, LocalTime look,
        CancellationToken stop)
    {
        var sky = new SharedSky();
        var pooled = choice == PriorChoice.Blocks ? Samples(usual).All(Photographer.LeadNights, isPooled: true, stop) : [];
        var blocks = choice == PriorChoice.Blocks ? BlockPriors.Of(pooled, came.Attribution.Text, stop) : null;
        if (choice == PriorChoice.Blocks && blocks is null) return null;
        Func<LocalDate, ChancePrior> priorFor = choice switch
        {
            PriorChoice.Blocks => blocks!.Without,
            PriorChoice.None => _ => ChancePrior.None,
            _ => _ => ChancePrior.Shipped,
        };
        if (!isLearning) return new ArchiveChances(priorFor);
        var own = watch == usual && pooled.Count > 0 ? pooled : Samples(watch).All(Photographer.LeadNights, isPooled: false, stop);
        return new ArchiveChances(priorFor, prior => ArchiveLearning.Of(
            prior, came.FeedId, watch.Site.Id, own, night => NightSpan.Of(watch.Site.Zone, night).End));

        ArchiveSamples Samples(Watch whose) => new(whose, runs, came, look, sky);
    }

    /// <summary>What is known of chances at an instant.</summary>
    /// <param name="night">The night that is looked at.</param>
    /// <param name="at">The instant asked for.</param>
    public ChanceBook At(LocalDate night, Instant at)
    {
        var prior = priorFor(night);
        if (learn is null) return ChanceBook.OfTrial(prior, []);
        return ChanceBook.OfTrial(prior, learnt.GetOrAdd(prior, start => new Lazy<ArchiveLearning>(() => learn(start))).Value.At(at));
    }
}
