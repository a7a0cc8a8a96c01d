namespace NightWatch.Planning.Verification.Expenses;

/// <summary>What the letters about one night came to when the car would leave.</summary>
/// <param name="Sent">Letters sent.</param>
/// <param name="Flips">Letters that took back what the one before had said: on and now off, off and now on.</param>
/// <param name="EverOn">A letter said that the night is on.</param>
/// <param name="OnAtLast">The last word was that it is on.</param>
/// <param name="Usable">It came usable.</param>
public readonly record struct LetterCourse(int Sent, int Flips, bool EverOn, bool OnAtLast, bool Usable);

/// <summary>How the letters about many nights did.</summary>
/// <param name="Sent">Letters sent.</param>
/// <param name="Flips">Of them reversals.</param>
/// <param name="ToldOnFailedUnwarned">Nights told on to the last that came to nothing.</param>
/// <param name="UsableNeverTold">Usable nights of which no letter said that they are on.</param>
public sealed record LetterScores(int Sent, int Flips, int ToldOnFailedUnwarned, int UsableNeverTold)
{
    /// <summary>Of nights whose outcome is known.</summary>
    public static LetterScores Of(IReadOnlyCollection<LetterCourse> nights) => new(
        nights.Sum(night => night.Sent),
        nights.Sum(night => night.Flips),
        nights.Count(night => night is { OnAtLast: true, Usable: false }),
        nights.Count(night => night is { EverOn: false, Usable: true }));
}
