using NightWatch.Letters;
using NightWatch.Letters.Notices;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Season;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NightWatch.Store.Due;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>
/// One subscriber's week: all their watches looked at for seven nights, one digest, kept with its due rows in one transaction.
/// </summary>
internal sealed class DigestPass(
    WatchStore watches,
    PassStore passes,
    NewsStore news,
    SharedSky sky,
    Cores cores,
    LetterWriter writer,
    IClock clock,
    Telemetry telemetry)
{
    private readonly MeasuredEvaluations evaluations = new(sky, telemetry);

    /// <summary>Writes and keeps; a digest that would say nothing is not written.</summary>
    public async Task<PassOutcome> KeepAsync(IReadOnlyList<DueClaim> claims, Watch asked, PassForecasts forecasts, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var (all, weather) = await ReadAsync(asked, forecasts, now, stop);
        var chances = await forecasts.BookAsync();
        var owesNews = await news.IsOwedAsync(asked.Subscriber.Address, stop);
        OutboxDraft[] letters = await cores.ComputeAsync<OutboxDraft[]>(async () =>
        {
            var draft = Draft(all, weather, chances, now) with { TellsNews = owesNews };
            if (!draft.SaysSomething) return [];
            using var render = telemetry.Begin(Stage.Render);
            return
            [
                OutboxDraft.Of(await writer.WriteDigestAsync(draft, stop), now) with
                {
                    TellsNewsTo = owesNews ? asked.Subscriber.Address : null,
                },
            ];
        });
        using var timer = telemetry.Begin(Stage.Commit);
        return await passes.CommitAsync(new PassCommit { Done = claims, Letters = letters }, now, stop);
    }

    /// <summary>What the digest would be written from now.</summary>
    public async Task<DigestDraft> DraftAsync(Watch asked, PassForecasts forecasts, Instant now, CancellationToken stop)
    {
        var (all, weather) = await ReadAsync(asked, forecasts, now, stop);
        return Draft(all, weather, await forecasts.BookAsync(), now);
    }

    private async Task<(IReadOnlyList<Watch> All, IReadOnlyList<PlaceWeather> Weather)> ReadAsync(
        Watch asked, PassForecasts forecasts, Instant now, CancellationToken stop)
    {
        var own = await watches.OfSubscriberAsync(asked.Subscriber.Address, stop);
        Watch[] all = [asked, .. own.Where(watch => watch.Id != asked.Id && !watch.IsPausedAt(now))];
        var weather = new List<PlaceWeather>();
        foreach (var watch in all) weather.Add(await forecasts.AskAsync(NightEvaluation.PlaceOf(watch)));
        return (all, weather);
    }

    private DigestDraft Draft(IReadOnlyList<Watch> all, IReadOnlyList<PlaceWeather> weather, ChanceBook chances, Instant now)
    {
        var plans = new List<NightPlan>();
        var seasons = new Dictionary<string, DarkCalendar>();
        foreach (var (watch, forecast) in all.Zip(weather))
        {
            var today = now.InZone(watch.Site.Zone).Date;
            plans.AddRange(Enumerable.Range(0, DigestDraft.Nights).Select(today.PlusDays).Where(night => !watch.IsPausedOn(night))
                .Select(night => evaluations.Of(watch, night, forecast, chances, now).Plan));
            seasons[watch.Id] = WatchSeason.Of(watch, today, DigestDraft.SeasonNights, sky.Ephemeris);
        }

        return new DigestDraft { Watches = all, Plans = plans, Seasons = seasons, Now = now };
    }
}
