using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Watchkeeping.Photographers;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>One site and one night that the sky allows: what was said, what was told, what came.</summary>
/// <param name="Site">Index of the site.</param>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Came">The class by the weather that came.</param>
/// <param name="Looks">By nights ahead, 0 to 3.</param>
/// <param name="ToldOn">The last word of the letters when the car would leave was go or marginal.</param>
/// <param name="Letters">Letters written about it until then.</param>
/// <param name="DayCloud">Mean cloud of the local day in the morning's forecast, fraction.</param>
/// <param name="NewMoon">The night of new Moon, or one beside it.</param>
/// <param name="CameBefore">By nights ahead: whether the last night that was over by then was usable; null: there was none.</param>
internal sealed record SimulatedNight(
    int Site, LocalDate Night, VerdictClass Came, IReadOnlyList<LookSaid> Looks, bool ToldOn, int Letters, double DayCloud, bool NewMoon,
    IReadOnlyList<bool?> CameBefore)
{
    /// <summary>It had a run of the wished length without a stop.</summary>
    public bool Usable => Came != VerdictClass.NoGo;

    /// <summary>What was said so many nights ahead, to be scored.</summary>
    public ScoredCall CallAt(int lead) =>
        new($"place-{Site + 1}", Night, Looks[lead].Class, Looks[lead].Probability, Came, CameBefore[lead]);
}
