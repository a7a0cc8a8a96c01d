using NightWatch.Alerts.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Service.Forecasts;
using NightWatch.Service.Passes;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Verdicts;
using NightWatch.Weather;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Service.Pages.Nights;

/// <summary>A night that is over, as the last look before its end had it: later answers know what came, and would flatter the forecast.</summary>
internal sealed partial class PastNights(VerdictStore verdicts, ForecastStore forecasts, RainStore rain, SharedSky sky, ILogger<PastNights> log)
{
    /// <summary>The plan of that look, or as much of it as is left.</summary>
    public async Task<(NightPlan Plan, NightBasis Basis)> FindAsync(Watch watch, LocalDate night, CancellationToken stop)
    {
        var look = (await verdicts.OfNightAsync(watch.Id, night, stop)).LastOrDefault(record => record.Pass != PassKind.After);
        var end = night.PlusDays(1).AtStartOfDayInZone(watch.Site.Zone).ToInstant();
        if (look is null) return (Plan(watch, night, new ForecastAnswer(), end), NightBasis.NeverLooked);
        if (await AnswerOfAsync(watch, look, stop) is { } answer)
        {
            var plan = Plan(watch, night, answer, look.At);
            // Another class or stretch: the watch was changed, or the rain before is forgotten. What was told then stays what is shown.
            if (plan.Verdict.Class == look.Verdict.Class && IsSame(plan.Verdict.Run, look.Verdict.Run))
                return (plan with { Verdict = look.Verdict with { Run = plan.Verdict.Run } }, NightBasis.LastLook);
        }

        return (Plan(watch, night, new ForecastAnswer(), look.At) with { Verdict = look.Verdict }, NightBasis.VerdictAlone);
    }

    // Kept to the millisecond.
    private static bool IsSame(Interval? a, Interval? b) =>
        a is { } one && b is { } other ? (one.Start - other.Start).TotalSeconds is > -1 and < 1 && (one.End - other.End).TotalSeconds is > -1 and < 1 : a is null && b is null;

    private NightPlan Plan(Watch watch, LocalDate night, ForecastAnswer answer, Instant at) => NightEvaluation.Of(watch, night, answer, at, sky).Plan;

    /// <summary>The answers behind a look, in the order in which the pass wrote them down; null: some are gone.</summary>
    private async Task<ForecastAnswer?> AnswerOfAsync(Watch watch, VerdictRecord look, CancellationToken stop)
    {
        var kept = await forecasts.FindAsync(look.ForecastIds, stop);
        if (kept.Count < look.ForecastIds.Count) return null;
        try
        {
            var members = kept.FirstOrDefault(answer => MembersId.IsOne(answer.FeedId));
            ForecastSeries[] series = [.. kept.Where(answer => answer != members).Select(Read)];
            var feed = series.FirstOrDefault()?.FeedId;
            var cell = FeedCell.Of(NightEvaluation.PlaceOf(watch));
            return new ForecastAnswer
            {
                Series = series.FirstOrDefault(),
                EarlierRuns = [.. series.Skip(1).Where(run => run.FeedId == feed)],
                SecondOpinion = series.FirstOrDefault(run => run.FeedId != feed),
                Members = members is null ? [] : ForecastReaders.ForEnsemble(MembersId.FeedOf(members.FeedId)).ReadMembers(members.Body.Body, members.Body.RetrievedAt),
                Rain = [.. (await rain.SinceAsync(cell.Key, look.At - RainLedger.LongestPast, stop)).Where(entry => entry.Hour < look.At)],
            };
        }
        catch (Exception unreadable) when (unreadable is ForecastFormatException or ArgumentException)
        {
            LogUnreadable(look.WatchId, look.Night, unreadable.Message);
            return null;
        }
    }

    private static ForecastSeries Read(StoredForecast kept) => ForecastReaders.For(kept.FeedId).Read(kept.Body.Body, kept.Body.RetrievedAt);

    [LoggerMessage(421, LogLevel.Warning, "A kept answer behind the verdict of {Watch} on {Night} cannot be read: {Why}")]
    private partial void LogUnreadable(string watch, LocalDate night, string why);
}
