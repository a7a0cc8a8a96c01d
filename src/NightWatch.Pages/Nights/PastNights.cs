using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Replays;
using NightWatch.Weather.Known;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Nights;

/// <summary>
/// A night that is over, as the last look before its end had it: later answers know what came, and would flatter the forecast.
/// </summary>
internal sealed class PastNights(VerdictStore verdicts, ForecastStore forecasts, SharedSky sky)
{
    /// <summary>The plan of that look, or as much of it as is left.</summary>
    public async Task<(NightPlan Plan, NightBasis Basis)> FindAsync(Watch watch, LocalDate night, CancellationToken stop)
    {
        var look = (await verdicts.OfNightAsync(watch.Id, night, stop)).LastOrDefault(record => record.Pass != PassKind.After);
        var end = night.PlusDays(1).AtStartOfDayInZone(watch.Site.Zone).ToInstant();
        if (look is null) return (SkyAlone(watch, night, end), NightBasis.NeverLooked);
        if (look.Runs is { } runs && await new StoredForecastRuns(forecasts).WeatherAsync(runs, stop) is { } weather)
        {
            var plan = NightEvaluation.Of(watch, night, weather, ChanceBook.Unlearnt, look.At, sky, runs.Rain).Plan;
            // Class and chance are the kept ones: they came of what the record had taught and of what had been told, which have gone on
            // since. Another stretch, worth or need: the watch was changed, or the rain before is forgotten. What was told then stays what
            // is shown.
            if (IsSamePlan(plan.Verdict, look.Verdict))
                return (plan with { Verdict = look.Verdict with { Run = plan.Verdict.Run } }, NightBasis.LastLook);
        }

        return (SkyAlone(watch, night, look.At) with { Verdict = look.Verdict }, NightBasis.VerdictAlone);
    }

    private static bool IsSamePlan(Verdict now, Verdict kept) =>
        IsSame(now.Run, kept.Run)
        && (
            kept.TradeOff is null
                ? now.Class == kept.Class // a row from before the worth was kept
                : IsSame(now.UsableMin, kept.UsableMin)
                    && now.Needs.Select(need => need.Factor).SequenceEqual(kept.Needs.Select(need => need.Factor)));

    // Kept to the tenth.
    private static bool IsSame(double? a, double? b) =>
        a is { } one && b is { } other ? Math.Abs(one - other) <= 0.1 : a is null && b is null;

    // Kept to the millisecond.
    private static bool IsSame(Interval? a, Interval? b) =>
        a is { } one && b is { } other
            ? (one.Start - other.Start).TotalSeconds is > -1 and < 1 && (one.End - other.End).TotalSeconds is > -1 and < 1
            : a is null && b is null;

    private NightPlan SkyAlone(Watch watch, LocalDate night, Instant at) =>
        NightEvaluation.Of(watch, night, PlaceWeather.Unknown, ChanceBook.Unlearnt, at, sky).Plan;
}
