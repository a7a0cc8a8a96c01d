using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Service.Commands.Plans;

/// <summary>The nights after this one that the same answer covers, through the same evaluation.</summary>
internal static class LaterNights
{
    /// <summary>Past the fifth night ahead a forecast is an outlook only.</summary>
    private const int Most = 5;

    /// <summary>In order of date, up to the first without any cloud forecast.</summary>
    public static IReadOnlyList<NightPlan> Of(NightPlan plan, PlaceWeather weather, Instant now, SharedSky sky, RainBefore? measured) =>
        [
            .. Enumerable
                .Range(1, Most)
                .Select(ahead =>
                    NightEvaluation.Of(plan.Watch, plan.Night.PlusDays(ahead), weather, ChanceBook.Shipped, now, sky, measured).Plan)
                .TakeWhile(later => later.Conditions.Any(step => step.Cloud is not null)),
        ];
}
