using NightWatch.Planning.Verdicts;
using NightWatch.Watchkeeping.Photographers;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>All that a run of simulated years shows; the same for the same options.</summary>
/// <param name="Seed">Of sites and weather.</param>
/// <param name="FirstNight">The first.</param>
/// <param name="Years">How many.</param>
/// <param name="Sites">How many.</param>
/// <param name="Every">Every so many-th night was looked at.</param>
/// <param name="Nights">Nights looked at that the sky allows; the others are no test of a forecast.</param>
/// <param name="Usable">Of them usable.</param>
/// <param name="Go">Of them go by the weather that came.</param>
/// <param name="LettersANight">Letters about a night that the sky allows, up to leave-by.</param>
/// <param name="Leads">By nights ahead.</param>
/// <param name="Letters">Going by the letters.</param>
/// <param name="Naive">Going by something else.</param>
internal sealed record YearsScores(
    int Seed,
    LocalDate FirstNight,
    int Years,
    int Sites,
    int Every,
    int Nights,
    int Usable,
    int Go,
    double LettersANight,
    IReadOnlyList<LeadScores> Leads,
    PolicyScores Letters,
    IReadOnlyList<PolicyDuel> Naive)
{
    public static YearsScores Of(int seed, int years, int sites, int every, IReadOnlyList<SimulatedNight> nights)
    {
        var siteYears = (double)years * sites / every;
        var letters = PolicyScores.OfLetters(nights, siteYears);
        return new YearsScores(
            seed, YearsRun.FirstNight, years, sites, every, nights.Count, nights.Count(night => night.Usable), nights.Count(night => night.Came == VerdictClass.Go),
            nights.Average(night => night.Letters),
            [.. Enumerable.Range(0, Photographer.LeadNights + 1).Select(lead => LeadScores.Of(lead, nights))],
            letters,
            [.. PolicyScores.Naive(nights, siteYears).Select(naive => PolicyDuel.Of(letters, naive))]);
    }
}
