using NodaTime;

namespace NightWatch.Planning.Chance;

/// <summary>
/// What the record taught of one feed at one lead, with its proof. Every version that was in use is kept, to trace old verdicts by.
/// </summary>
public sealed record LearntChance
{
    /// <summary>What it is of.</summary>
    public required ChanceKey For { get; init; }

    /// <summary>Rises by one whenever other chances follow from it; 0: none ever did.</summary>
    public required int Version { get; init; }

    /// <summary>When it was learnt.</summary>
    public required Instant LearntAt { get; init; }

    /// <summary>What was learnt.</summary>
    public required ChanceLearning Learning { get; init; }

    /// <summary>How it does against the prior alone.</summary>
    public required LearningProof Proof { get; init; }

    /// <summary>How many of its looks' outcomes come from whom, by the source's word.</summary>
    public required IReadOnlyDictionary<string, int> Sources { get; init; }

    /// <summary>Chances follow from it; until it is proven, the prior alone gives them.</summary>
    public bool IsUsed => Proof.IsProven;

    /// <summary>Learns from a record.</summary>
    /// <param name="key">The feed and lead.</param>
    /// <param name="before">What was learnt of them before; null: nothing that still counts.</param>
    /// <param name="freeVersion">The first version that no stored one has; it counts where there is nothing before.</param>
    /// <param name="course">The record gone through.</param>
    /// <param name="sources">Where its outcomes come from.</param>
    /// <param name="now">The clock reading.</param>
    public static LearntChance Of(
        ChanceKey key, LearntChance? before, int freeVersion, LearningCourse course, IReadOnlyDictionary<string, int> sources, Instant now)
    {
        ArgumentNullException.ThrowIfNull(course);
        // What is not used may be learnt anew as often as one likes: no chance changes.
        var isSame = before is { IsUsed: false } && !course.Proof.IsProven;
        return new LearntChance
        {
            For = key,
            Version = before is null
                ? course.Proof.IsProven
                    ? Math.Max(1, freeVersion)
                    : freeVersion
                : isSame
                    ? before.Version
                    : before.Version + 1,
            LearntAt = now,
            Learning = course.Learning,
            Proof = course.Proof,
            Sources = sources,
        };
    }
}
