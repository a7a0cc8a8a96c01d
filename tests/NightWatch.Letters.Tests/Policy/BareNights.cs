using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Letters.Tests.Policy;

/// <summary>
/// A planned night with its class, chance, run, date and zone changed to order: the policy's tests go through these in every sequence,
/// and no weather brings most of them about. Letters are never written from them.
/// </summary>
internal static class BareNights
{
    private static readonly NightPlan Planned = new InventedWeather(TestDrafts.Fair).Plan(Ines.CoreWatch, Ines.Night, Ines.At(7));

    /// <summary>A night of a class; the run number stands for the forecast run.</summary>
    public static NightPlan Of(
        VerdictClass verdict, double probability = double.NaN, int run = 0, LocalDate? night = null, Watch? watch = null,
        ProbabilityBasis basis = ProbabilityBasis.LaggedRuns, bool hasForecast = true)
    {
        var (date, of) = (night ?? Ines.Night, watch ?? Ines.CoreWatch);
        Instant At(int hour, int minute, int day = 0) => Ines.Local(date.PlusDays(day), hour, minute, of.Site.Zone);
        var made = At(7, 0);
        return Planned with
        {
            Watch = of,
            Night = date,
            MadeAt = made,
            Sky = Planned.Sky with
            {
                Night = date,
                Zone = of.Site.Zone,
                Span = new Interval(At(12, 0), At(12, 0, 1)),
                AstronomicalNight = [new Interval(At(23, 42), At(4, 31, 1))],
            },
            Verdict = Planned.Verdict with
            {
                Class = verdict,
                Run = new Interval(At(0, 5, 1), At(4, 20, 1)),
                Probability = new Probability(double.IsNaN(probability) ? UsualChance(verdict) : probability, basis, 4),
            },
            Forecast = hasForecast ? Planned.Forecast! with { IssuedAt = made + Duration.FromHours(run - 2), RetrievedAt = made } : null,
            LeaveBy = At(18, 45),
        };
    }

    private static double UsualChance(VerdictClass verdict) =>
        verdict switch
        {
            VerdictClass.Go => 0.82,
            VerdictClass.Marginal => 0.55,
            _ => 0.12,
        };
}
