using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>What a subscriber knows about one watch and one night: the policy's whole memory.</summary>
public sealed record ToldNight
{
    /// <summary>The watch.</summary>
    public required string WatchId { get; init; }

    /// <summary>The local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>The class last told; null: nothing was told yet.</summary>
    public VerdictClass? Told { get; init; }

    /// <summary>The letter that told it.</summary>
    public LetterKind? ToldBy { get; init; }

    /// <summary>When it was told.</summary>
    public Instant? ToldAt { get; init; }

    /// <summary>Probability last told.</summary>
    public double? ToldProbability { get; init; }

    /// <summary>Leave-by last told: until then a change of mind still reaches the subscriber at home.</summary>
    public Instant? LeaveBy { get; init; }

    /// <summary>The shooting window last told.</summary>
    public Interval? ToldRun { get; init; }

    /// <summary>The figures last told, one a factor.</summary>
    public IReadOnlyList<ToldFigure> Figures { get; init; } = [];

    /// <summary>A class that differs from what was told and waits to hold for a second pass.</summary>
    public VerdictClass? Pending { get; init; }

    /// <summary>The run the pending class was first seen in.</summary>
    public Instant? PendingRun { get; init; }

    /// <summary>Letters sent about this night, by kind (an outlook, one morning timeline, ...).</summary>
    public IReadOnlyList<LetterKind> Sent { get; init; } = [];

    /// <summary>Kind of each letter's revision, for the dedupe key: rises by one a letter.</summary>
    public int Revision { get; init; }

    /// <summary>SEQUENCE of the calendar entry; −1: none was sent.</summary>
    public int CalendarSequence { get; init; } = -1;

    /// <summary>The calendar entry stands in the subscriber's calendar.</summary>
    public bool OnCalendar { get; init; }

    /// <summary>Stood down for good.</summary>
    public bool Closed { get; init; }

    /// <summary>No letters about this night (snoozed by the subscriber), but for the one that takes it out of the calendar.</summary>
    public bool Snoozed { get; init; }

    /// <summary>The subscriber chose this night in place of another: its evening is free whatever the watch says.</summary>
    public bool Chosen { get; init; }

    /// <summary>The subscriber counts on the night: the last word was go or marginal.</summary>
    public bool IsOn => Told is VerdictClass.Go or VerdictClass.Marginal;

    /// <summary>The subscriber gave the night up, for another or for a rest; the sky's own no-go is told with its chance.</summary>
    public bool IsGivenUp => IsOff && ToldProbability is null;

    /// <summary>The last word was that the night is off.</summary>
    public bool IsOff => Told is VerdictClass.NoGo;
}
