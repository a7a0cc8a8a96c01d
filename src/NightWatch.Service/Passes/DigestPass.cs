using NightWatch.Alerts.Letters;
using NightWatch.Alerts.Letters.Notices;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Service.Forecasts;
using NightWatch.Sky.Season;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Service.Passes;

/// <summary>One subscriber's week: all their watches looked at for seven nights, one digest, kept with its due rows in one transaction.</summary>
internal sealed class DigestPass(WatchStore watches, PassStore passes, SharedSky sky, LetterWriter writer, IClock clock)
{
    /// <summary>Writes and keeps; a digest that would say nothing is not written.</summary>
    public async Task<PassOutcome> KeepAsync(IReadOnlyList<DueClaim> claims, Watch asked, PassForecasts forecasts, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var own = await watches.OfSubscriberAsync(asked.Subscriber.Address, stop);
        var draft = await DraftAsync([asked, .. own.Where(watch => watch.Id != asked.Id && !watch.IsPausedAt(now))], forecasts, now);
        OutboxDraft[] letters = draft.SaysSomething ? [OutboxDraft.Of(await writer.WriteDigestAsync(draft, stop), now)] : [];
        return await passes.CommitAsync(new PassCommit { Done = claims, Letters = letters }, now, stop);
    }

    private async Task<DigestDraft> DraftAsync(IReadOnlyList<Watch> all, PassForecasts forecasts, Instant now)
    {
        var plans = new List<NightPlan>();
        var seasons = new Dictionary<string, DarkCalendar>();
        foreach (var watch in all)
        {
            var forecast = await forecasts.AskAsync(NightEvaluation.PlaceOf(watch));
            var today = now.InZone(watch.Site.Zone).Date;
            plans.AddRange(Enumerable.Range(0, DigestDraft.Nights).Select(today.PlusDays).Where(night => !watch.IsPausedOn(night))
                .Select(night => NightEvaluation.Of(watch, night, forecast, now, sky).Plan));
            seasons[watch.Id] = DarkCalendar.Of(
                watch.Site.Position, watch.Site.Zone, today, DigestDraft.SeasonNights, watch.Subject, watch.Limits.MinAltitudeDeg, watch.Site.Horizon, sky.Ephemeris);
        }

        return new DigestDraft { Watches = all, Plans = plans, Seasons = seasons, Now = now };
    }
}
