using NightWatch.Letters.Policy;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>Puts together what the store keeps of a watch's nights.</summary>
internal sealed class RecordReader(VerdictStore verdicts, OutcomeStore outcomes, ToldNightStore told)
{
    public static readonly LocalDate Earliest = new(1900, 1, 1);
    public static readonly LocalDate Latest = new(2199, 12, 31);

    /// <summary>Calls older than this say little of today's: seasons come round, and feeds change their models.</summary>
    private const int TrackDays = 400;

    /// <summary>What came of the earlier calls at every watch that letters speak of, by watch id.</summary>
    public async Task<IReadOnlyDictionary<string, TrackRecord>> TracksAsync(
        IEnumerable<LetterOrder> orders, Instant now, CancellationToken cancellationToken)
    {
        var tracks = new Dictionary<string, TrackRecord>();
        foreach (var watch in orders.Select(order => order.Plan.Watch).DistinctBy(watch => watch.Id))
            tracks.Add(watch.Id, await TrackAsync(watch, now, cancellationToken));
        return tracks;
    }

    /// <summary>What came of a watch's calls of the last year or so.</summary>
    public async Task<TrackRecord> TrackAsync(Watch watch, Instant now, CancellationToken cancellationToken) =>
        (await ReadAsync(watch.Id, now.InUtc().Date.PlusDays(-TrackDays), null, cancellationToken)).ForReaderOf(watch).Track();

    /// <summary>The nights from a date on with what each chance was made of, to learn from.</summary>
    public Task<WatchRecord> LooksAsync(string watchId, LocalDate from, CancellationToken cancellationToken) =>
        ReadAsync(watchId, from, Latest, withFigures: true, cancellationToken);

    /// <summary>The nights that were looked at or of which somebody said what they were like, both ends included.</summary>
    public Task<WatchRecord> ReadAsync(string watchId, LocalDate? from, LocalDate? to, CancellationToken cancellationToken) =>
        ReadAsync(watchId, from ?? Earliest, to ?? Latest, withFigures: false, cancellationToken);

    private async Task<WatchRecord> ReadAsync(
        string watchId, LocalDate first, LocalDate last, bool withFigures, CancellationToken cancellationToken)
    {
        // A night that the reader chose counts whatever the evening, so what was told is read too.
        var memories = await told.FromAsync(watchId, first, cancellationToken);
        var marks = (await verdicts.MarksAsync(watchId, first, last, withRuns: false, withFigures, cancellationToken)).ToLookup(mark =>
            mark.Night);
        var said = (await outcomes.OfWatchAsync(watchId, first, last, cancellationToken)).ToLookup(outcome => outcome.Night);
        var known = memories.ToDictionary(memory => memory.Night.Night, memory => memory.Night);
        return new WatchRecord(
            watchId,
            [
                .. marks.Select(night => night.Key).Union(said.Select(night => night.Key)).Order()
                    .Select(night => new RecordedNight(night, [.. marks[night]], [.. said[night]], known.GetValueOrDefault(night))),
            ]);
    }
}
