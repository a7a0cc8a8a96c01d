using System.Collections.Frozen;

namespace NightWatch.Planning.Chance;

/// <summary>The chance of every feed and lead, as far as it is known. Immutable: a look takes the book as it stands.</summary>
public sealed class ChanceBook
{
    /// <summary>A night farther ahead has the model of this lead; nothing is known of a forecast so far ahead.</summary>
    private const int MostLead = 16;

    private readonly ChanceModel[] unlearnt;
    private readonly FrozenDictionary<ChanceKey, LearntChance> learnt;
    private readonly FrozenDictionary<ChanceKey, ChanceLearning> used;

    /// <summary>Of an installation: its prior, doubted as it should be, and what its record taught.</summary>
    /// <param name="prior">For every feed and lead of which nothing is proven.</param>
    /// <param name="learnt">At most one a feed and lead.</param>
    /// <exception cref="ArgumentException">Two of one feed and lead.</exception>
    public ChanceBook(ChancePrior prior, IEnumerable<LearntChance> learnt)
        : this(lead => ChanceLearning.Start(prior, lead).ModelFor(""), learnt)
    {
    }

    private ChanceBook(Func<int, ChanceModel> unlearnt, IEnumerable<LearntChance> learnt)
    {
        this.unlearnt = [.. Enumerable.Range(0, MostLead + 1).Select(unlearnt)];
        All = [.. learnt.OrderBy(one => one.For.FeedId, StringComparer.Ordinal).ThenBy(one => one.For.Lead)];
        if (All.GroupBy(one => one.For).FirstOrDefault(key => key.Count() > 1) is { } twice)
            throw new ArgumentException($"Accepted: one a feed and lead; {twice.Key} has several.", nameof(learnt));
        this.learnt = All.ToFrozenDictionary(one => one.For);
        used = All.Where(one => one.IsUsed).ToFrozenDictionary(one => one.For, one => one.Learning);
    }

    private ChanceBook(ChancePrior prior, FrozenDictionary<ChanceKey, ChanceLearning> used)
        : this(lead => ChanceModel.OfPrior(prior, lead), []) => this.used = used;

    /// <summary>
    /// The prior that comes with the program at its word, without doubt and climate: where there is no record to learn from.
    /// </summary>
    public static ChanceBook Shipped { get; } = OfTrial(ChancePrior.Shipped, []);

    /// <summary>Of an installation that has not learnt anything yet.</summary>
    public static ChanceBook Unlearnt { get; } = new(ChancePrior.Shipped, []);

    /// <summary>Of a trial: a prior at its word, and what was learnt used as it stands, proven or not.</summary>
    /// <param name="prior">For every feed and lead of which nothing was learnt.</param>
    /// <param name="learnt">At most one a feed and lead.</param>
    public static ChanceBook OfTrial(ChancePrior prior, IEnumerable<KeyValuePair<ChanceKey, ChanceLearning>> learnt) =>
        new(prior, learnt.ToFrozenDictionary());

    /// <summary>By feed, then lead.</summary>
    public IReadOnlyList<LearntChance> All { get; }

    /// <summary>What was learnt of a feed and lead, used or not; null: nothing.</summary>
    public LearntChance? Find(ChanceKey key) => learnt.GetValueOrDefault(key);

    /// <summary>The model of a feed, a lead and a place.</summary>
    /// <param name="feedId">The feed, as in the forecast series.</param>
    /// <param name="lead">Nights ahead, 0 on the day.</param>
    /// <param name="place">The site's id.</param>
    public ChanceModel Of(string feedId, int lead, string place) =>
        used.TryGetValue(new ChanceKey(feedId, lead), out var learning) ? learning.ModelFor(place) : BeforeLearning(lead);

    /// <summary>The model of a lead by the prior alone, the same for every feed and place.</summary>
    public ChanceModel BeforeLearning(int lead) => unlearnt[Math.Min(lead, MostLead)];
}
