using System.Collections.Immutable;

namespace NightWatch.Planning.Chance;

/// <summary>The chance of every feed and lead, as far as it is known. Immutable: a look takes the book as it stands.</summary>
public sealed class ChanceBook
{
    private readonly ChancePrior prior;
    private readonly ImmutableDictionary<(string FeedId, int Lead), ChanceLearning> learnt;

    /// <param name="prior">For every feed and lead that nothing was learnt of.</param>
    /// <param name="learnt">What the record taught, by feed and nights ahead; null: nothing.</param>
    public ChanceBook(ChancePrior prior, ImmutableDictionary<(string FeedId, int Lead), ChanceLearning>? learnt = null) =>
        (this.prior, this.learnt) = (prior, learnt ?? ImmutableDictionary<(string FeedId, int Lead), ChanceLearning>.Empty);

    /// <summary>The prior that comes with the program.</summary>
    public static ChanceBook Shipped { get; } = new(ChancePrior.Shipped);

    /// <summary>The model of a feed, a lead and a place.</summary>
    /// <param name="feedId">The feed, as in the forecast series.</param>
    /// <param name="lead">Nights ahead, 0 on the day.</param>
    /// <param name="place">The site's id.</param>
    public ChanceModel Of(string feedId, int lead, string place) =>
        learnt.TryGetValue((feedId, lead), out var known) ? known.ModelFor(place) : ChanceModel.OfPrior(prior, lead);
}
