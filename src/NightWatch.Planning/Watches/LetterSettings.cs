using NodaTime;

namespace NightWatch.Planning.Watches;

/// <summary>Metric or imperial.</summary>
public enum UnitSystem
{
    /// <summary>°C, m/s, km, mm.</summary>
    Metric,

    /// <summary>°F, mph, miles, inches.</summary>
    Imperial,
}

/// <summary>When and how one subscriber is written to. Times are local at the site; looks come up to nine minutes after them.</summary>
public sealed record LetterSettings
{
    /// <summary>Outlooks look this many nights ahead, 1 to 5.</summary>
    public int LeadNights { get; init; } = 3;

    /// <summary>The evening pass.</summary>
    public LocalTime EveningAt { get; init; } = new(19, 0);

    /// <summary>The morning pass.</summary>
    public LocalTime MorningAt { get; init; } = new(7, 0);

    /// <summary>Same-day checks, between morning and leave-by.</summary>
    public IReadOnlyList<LocalTime> SameDayChecks { get; init; } = [new(11, 0), new(14, 0), new(16, 30)];

    /// <summary>No letters from here ...</summary>
    public LocalTime QuietFrom { get; init; } = new(22, 0);

    /// <summary>... to here, but for a reschedule warning that would come too late.</summary>
    public LocalTime QuietUntil { get; init; } = new(6, 30);

    /// <summary>
    /// Of marginal nights outlooks look only this many nights ahead, 1 to 5. By default the last evening before: two or three nights out a
    /// maybe is mostly settled by the next evening, and a maybe first and a go next are two letters where one would do.
    /// </summary>
    public int MarginalLeadNights { get; init; } = 1;

    /// <summary>A marginal night at or above this probability is worth an outlook.</summary>
    public double MarginalOutlookProbability { get; init; } = 0.6;

    /// <summary>The weekday whose morning brings the week's digest of all the subscriber's watches; null: none.</summary>
    public IsoDayOfWeek? Digest { get; init; }

    /// <summary>An https address that is called with every letter, beside the mail, signed; null: none.</summary>
    public string? Webhook { get; init; }

    /// <summary>Units in the letters.</summary>
    public UnitSystem Units { get; init; }
}
