using NightWatch.Planning.Verification.Expenses;
using NightWatch.Watchkeeping.Photographers;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>All that a run of simulated years shows; the same for the same options.</summary>
/// <param name="Climate">Kind, as its option is written.</param>
/// <param name="Seed">Of sites and weather.</param>
/// <param name="FirstNight">The first.</param>
/// <param name="Years">How many.</param>
/// <param name="Sites">How many.</param>
/// <param name="Every">Every so many-th night was looked at.</param>
/// <param name="Members">Of the ensemble; 0: earlier runs alone.</param>
/// <param name="Nights">Nights looked at that the sky allows; the others are no test of a forecast.</param>
/// <param name="Usable">Of them usable.</param>
/// <param name="Leads">By nights ahead.</param>
/// <param name="Letters">Of every pass up to leave-by.</param>
internal sealed record YearsScores(
    string Climate, int Seed, LocalDate FirstNight, int Years, int Sites, int Every, int Members, int Nights, int Usable,
    IReadOnlyList<LeadScores> Leads, LetterScores Letters)
{
    public static YearsScores Of(
        string climate, int seed, int years, int sites, int every, int members, IReadOnlyList<SimulatedNight> nights) =>
        new(
            climate,
            seed,
            YearsSimulation.FirstNight,
            years,
            sites,
            every,
            members,
            nights.Count,
            nights.Count(night => night.Usable),
            [.. Enumerable.Range(0, Photographer.LeadNights + 1).Select(lead => LeadScores.Of(lead, nights))],
            LetterScores.Of([.. nights.Select(night => night.Letters)]));
}
