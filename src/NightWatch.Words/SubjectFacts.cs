using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Words;

/// <summary>What a subject line can tell of a night.</summary>
public sealed record SubjectFacts
{
    /// <summary>What is new.</summary>
    public required NightNews News { get; init; }

    /// <summary>The class it is about.</summary>
    public required VerdictClass Class { get; init; }

    /// <summary>Which night.</summary>
    public required SpokenNight Night { get; init; }

    /// <summary>The shooting window; null: none.</summary>
    public Interval? Run { get; init; }

    /// <summary>When to leave; null: unknown.</summary>
    public Instant? LeaveBy { get; init; }

    /// <summary>Chance, fraction.</summary>
    public required double Chance { get; init; }

    /// <summary>The reason that decided.</summary>
    public required Reason Deciding { get; init; }

    /// <summary>The best choice instead, or the one the reader took; null: none.</summary>
    public SpokenChoice? Instead { get; init; }

    /// <summary>The date from which the watch looks again, where its reader lets it rest.</summary>
    public LocalDate? PausedUntil { get; init; }
}

/// <summary>A subject line before it is made to fit.</summary>
/// <param name="Head">Stands before the site's name and is never cut.</param>
/// <param name="Tails">Stand after it; the last ones go first where there is no room.</param>
public sealed record SubjectWords(string Head, IReadOnlyList<string> Tails);
