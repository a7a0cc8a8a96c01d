using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Watchkeeping.Archives;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>One site and one night that the sky allows: what was said, what was told, what came.</summary>
/// <param name="Site">Index of the site.</param>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Came">The class by the weather that came.</param>
/// <param name="Looks">At 15:00, by nights ahead, 0 to 3.</param>
/// <param name="Letters">What the letters of every pass came to.</param>
internal sealed record SimulatedNight(int Site, LocalDate Night, VerdictClass Came, IReadOnlyList<ArchivedLook> Looks, LetterCourse Letters)
{
    /// <summary>It had a run of the wished length without a stop.</summary>
    public bool Usable => Came != VerdictClass.NoGo;

    /// <summary>The site by its name.</summary>
    public string Place => $"place-{Site + 1}";
}
