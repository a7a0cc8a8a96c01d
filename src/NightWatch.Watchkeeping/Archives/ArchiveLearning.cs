using System.Collections.Immutable;
using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>What the nights of an archive teach in turn: a look knows those that were over by then, and no more.</summary>
internal sealed class ArchiveLearning
{
    private readonly Instant[] ends;
    private readonly ImmutableDictionary<ChanceKey, ChanceLearning>[] known;

    private ArchiveLearning(Instant[] ends, ImmutableDictionary<ChanceKey, ChanceLearning>[] known) =>
        (this.ends, this.known) = (ends, known);

    /// <summary>Learns the chances from the nights before each look.</summary>
    /// <param name="prior">Where it begins.</param>
    /// <param name="feedId">Whose forecasts.</param>
    /// <param name="place">The site's id.</param>
    /// <param name="looks">The watch's own questions count; any order.</param>
    /// <param name="endOf">When a night is over.</param>
    public static ArchiveLearning Of(
        ChancePrior prior, string feedId, string place, IEnumerable<SampledLook> looks, Func<LocalDate, Instant> endOf)
    {
        SampledLook[] own = [.. looks.Where(look => look.IsWatchs)];
        var book = own.Select(look => look.Lead).Distinct()
            .ToImmutableDictionary(lead => new ChanceKey(feedId, lead), lead => ChanceLearning.Start(prior, lead));
        var (ends, known) = (new List<Instant>(), new List<ImmutableDictionary<ChanceKey, ChanceLearning>> { book });
        foreach (var night in own.GroupBy(look => look.Night).OrderBy(night => night.Key))
        {
            foreach (var lead in night.GroupBy(look => look.Lead))
            {
                ChanceRow[] rows = [.. lead.Select(look => new ChanceRow(place, look.Figures, look.Usable))];
                var key = new ChanceKey(feedId, lead.Key);
                book = book.SetItem(key, book[key].After(rows));
            }

            ends.Add(endOf(night.Key));
            known.Add(book);
        }

        return new ArchiveLearning([.. ends], [.. known]);
    }

    /// <summary>What was learnt from nights that were over.</summary>
    public ImmutableDictionary<ChanceKey, ChanceLearning> At(Instant at)
    {
        var found = Array.BinarySearch(ends, at);
        return known[found < 0 ? ~found : found + 1];
    }
}
