using System.Collections.Concurrent;
using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>The chances by which the nights of an archive are looked at.</summary>
internal abstract class ArchiveChances
{
    /// <summary>The prior that comes with the program, and nothing learnt.</summary>
    public static ArchiveChances Shipped { get; } = Of(_ => ChancePrior.Shipped);

    /// <summary>What is known of chances at an instant.</summary>
    /// <param name="night">The night that is looked at.</param>
    /// <param name="at">When.</param>
    public abstract ChanceBook At(LocalDate night, Instant at);

    /// <summary>A prior taken at its word.</summary>
    /// <param name="priorFor">By night.</param>
    public static ArchiveChances Of(Func<LocalDate, ChancePrior> priorFor) => new Fixed(priorFor);

    /// <summary>A prior, and what the nights before taught on it.</summary>
    /// <param name="priorFor">By night; the same object for many nights.</param>
    /// <param name="learn">What all nights teach, each in its turn, on a prior.</param>
    public static ArchiveChances Learning(Func<LocalDate, ChancePrior> priorFor, Func<ChancePrior, ArchiveLearning> learn) =>
        new Learnt(priorFor, learn);

    private sealed class Fixed(Func<LocalDate, ChancePrior> priorFor) : ArchiveChances
    {
        public override ChanceBook At(LocalDate night, Instant at) => new(priorFor(night));
    }

    private sealed class Learnt(Func<LocalDate, ChancePrior> priorFor, Func<ChancePrior, ArchiveLearning> learn) : ArchiveChances
    {
        private readonly ConcurrentDictionary<ChancePrior, Lazy<ArchiveLearning>> kept = new();

        public override ChanceBook At(LocalDate night, Instant at)
        {
            var prior = priorFor(night);
            return new ChanceBook(prior, kept.GetOrAdd(prior, start => new Lazy<ArchiveLearning>(() => learn(start))).Value.At(at));
        }
    }
}
