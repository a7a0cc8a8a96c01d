using NightWatch.Planning.Verification;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>What a rule for going costs.</summary>
/// <param name="Name">The rule.</param>
/// <param name="Calls">Nights by whether one went and whether they were usable.</param>
/// <param name="SiteYears">Site-years behind the counts, less for nights not looked at.</param>
internal sealed record PolicyScores(string Name, ContingencyTable Calls, double SiteYears)
{
    /// <summary>At most this much cloud is a clear day to one who wants it clear; the planner's own limit for a go.</summary>
    private const double ClearDay = 0.20;

    /// <summary>At most this much cloud is a fair chance; the planner's own limit for a no-go.</summary>
    private const double FairDay = 0.45;

    /// <summary>Drives a site and year.</summary>
    public double DrivesAYear => Calls.SaidOn / SiteYears;

    /// <summary>Drives for nothing, a site and year.</summary>
    public double DrivesForNothingAYear => Calls.FalseAlarms / SiteYears;

    /// <summary>Usable nights spent at home, a site and year.</summary>
    public double NightsLostAYear => Calls.Misses / SiteYears;

    /// <summary>The service's letters.</summary>
    public static PolicyScores OfLetters(IReadOnlyList<SimulatedNight> nights, double siteYears) =>
        Of("by the letters", nights, siteYears, night => night.ToldOn);

    /// <summary>What one could go by without them. Each knows the dark calendar and the subject's season: nights that the sky rules out are nobody's.</summary>
    public static IReadOnlyList<PolicyScores> Naive(IReadOnlyList<SimulatedNight> nights, double siteYears) =>
    [
        Of("always go", nights, siteYears, _ => true),
        Of("go at new Moon", nights, siteYears, night => night.NewMoon),
        Of("go on the day's cloud figure, at most 20 %", nights, siteYears, night => night.DayCloud <= ClearDay),
        Of("go on the day's cloud figure, at most 45 %", nights, siteYears, night => night.DayCloud <= FairDay),
    ];

    private static PolicyScores Of(string name, IReadOnlyList<SimulatedNight> nights, double siteYears, Func<SimulatedNight, bool> goes) =>
        new(name, ContingencyTable.Of(nights.Select(night => (goes(night), night.Usable))), siteYears);
}
