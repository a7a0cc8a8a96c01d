using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Watchkeeping.Replays;

/// <summary>One look as it was and as it comes out now.</summary>
/// <param name="Pass">Which pass looked.</param>
/// <param name="At">The instant of it.</param>
/// <param name="Was">Class then.</param>
/// <param name="WasLikely">Probability then.</param>
/// <param name="Is">Class now.</param>
/// <param name="IsLikely">Probability now.</param>
/// <param name="WasLetter">The letter then; null: silence.</param>
/// <param name="IsLetter">The letter now; null: silence.</param>
/// <param name="Why">Why it would write or keep silent now.</param>
internal sealed record ReplayedLook(
    PassKind Pass,
    Instant At,
    VerdictClass Was,
    double WasLikely,
    VerdictClass Is,
    double IsLikely,
    LetterKind? WasLetter,
    LetterKind? IsLetter,
    string Why)
{
    /// <summary>
    /// Figures are stored and computed alike, so equal inputs give equal bits; a little slack for another machine's rounding.
    /// </summary>
    public bool IsSame => Was == Is && Math.Abs(WasLikely - IsLikely) < 1e-9 && WasLetter == IsLetter;
}

/// <summary>One night of one watch: what was told, what would have been told, what came.</summary>
/// <param name="WatchId">The watch.</param>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Looks">Those that could be made again, in order.</param>
/// <param name="Lost">Looks whose forecasts are not kept any more, or that an earlier version made.</param>
/// <param name="WasOn">The last word then was go or marginal.</param>
/// <param name="IsOn">The last word would have been.</param>
/// <param name="Outcome">What it was like, by the most trusted source; null: not known.</param>
internal sealed record ReplayedNight(
    string WatchId, LocalDate Night, IReadOnlyList<ReplayedLook> Looks, int Lost, bool WasOn, bool IsOn, NightOutcome? Outcome)
{
    /// <summary>The class that the calls are scored by; null: nobody can say, or the reader could not have gone.</summary>
    public VerdictClass? ScoredAs { get; init; }

    /// <summary>Letters then.</summary>
    public IEnumerable<LetterKind> WasLetters => Looks.Select(look => look.WasLetter).OfType<LetterKind>();

    /// <summary>Letters now.</summary>
    public IEnumerable<LetterKind> IsLetters => Looks.Select(look => look.IsLetter).OfType<LetterKind>();

    /// <summary>It came usable; null: it is not scored.</summary>
    public bool? Usable => ScoredAs is { } came ? came != VerdictClass.NoGo : null;

    /// <summary>Every look comes out as it was.</summary>
    public bool IsSame => Looks.All(look => look.IsSame);
}
