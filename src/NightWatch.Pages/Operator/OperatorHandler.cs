using NightWatch.Delivery.Mail;
using NightWatch.Pages.Subscribers;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Suppression;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Feeds;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Operator;

/// <summary>What the operator sees.</summary>
internal sealed class OperatorHandler(
    Database database, WatchStore watches, SubscriberStore subscribers, OutboxStore outbox, BacklogStore backlog, FeedHoldStore holds,
    ForecastStore forecasts, SuppressionStore suppression, MailRations rations, FeedsOptions feeds, IClock clock)
{
    private const int MostDead = 100;
    private const int MostUnreadable = 10;

    private static readonly ILanguage Words = Speech.ToAnybody.Language;

    public async Task<OperatorModel> OfAsync(string? note, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var weather = feeds.ToWeather();
        string[] ids = [.. weather.KeptIds()];
        var waits = await backlog.ReadAsync(ids, now, stop);
        var (all, resting) = await watches.CountRestingAsync(now, stop);
        var asked = await rations.LastHourAsync(now, stop);
        var held = await holds.ListAsync(now, stop);
        var lines = new List<FeedLine>();
        foreach (var id in ids)
        {
            lines.Add(new FeedLine(
                MembersId.FeedOf(id),
                Words.AgoOrNever(waits.LastAnswers.TryGetValue(id, out var at) ? now - at : null),
                DayOf(await forecasts.CountSinceAsync(id, now - Duration.FromDays(1), stop), weather.BudgetOf(id)),
                HoldOf(held, id)));
        }

        return new OperatorModel(
            note,
            [
                ("Subscribers", Words.Waiting(await subscribers.CountAsync(stop), oldest: null)),
                ("Watches", Words.Watches(all, resting)),
                ("Rows that cannot be read", UnreadableOf(database.Unreadable.Known)),
                ("Looks that are due", Words.Waiting(waits.DueOpen, now - waits.OldestDueAt)),
                ("Oldest letter that waits", Words.OldestLetter(now - waits.OldestLetterAt)),
                ("Letters for sign-up and sign-in, last hour", Words.StrangersLetters(asked, MailRations.MostAnHour)),
            ],
            [.. (await outbox.CountAsync(stop)).OrderBy(pair => pair.Key).Select(pair => (pair.Key.ToString(), pair.Value))],
            [.. (await outbox.ListAsync(OutboxState.Dead, MostDead, stop)).Select(entry => LineOf(entry, now))],
            lines,
            [
                .. (await suppression.ListAsync(stop)).Select(entry =>
                    (
                        Redaction.Of(entry.Address),
                        entry.Code is null ? Redaction.Of(entry.Reason) : $"{entry.Code} {Redaction.Of(entry.Reason)}",
                        InstantText.Minute(entry.At))),
            ]);
    }

    private static DeadLetter LineOf(OutboxEntry entry, Instant now) =>
        new(
            entry.Id,
            entry.Kind,
            Redaction.Of(entry.Recipient),
            InstantText.Minute(entry.CreatedAt),
            InstantText.Minute(entry.NotAfter),
            entry.LastReply?.Text ?? Words.NothingSaid,
            entry.NotAfter >= now);

    private static string UnreadableOf(IReadOnlyList<UnreadableRow> rows) =>
        Words.UnreadableRows(
            [.. rows.Take(MostUnreadable).Select(row => Redaction.Of(row.Name))], Math.Max(0, rows.Count - MostUnreadable));

    private static string DayOf(long answers, FeedBudget? budget) =>
        Words.FeedsDay(answers, budget is { } most ? ((long)Math.Ceiling(answers * most.CallsAnAnswer), most.CallsADay) : null);

    private static string HoldOf(IReadOnlyList<FeedHold> held, string feed)
    {
        var own = held.Where(hold => hold.Feed == feed).ToArray();
        if (own.FirstOrDefault(hold => hold.Cell is null) is { } whole) return Words.HeldBack(places: null, whole.Until);
        return Words.HeldBack(own.Length, own.Length == 0 ? null : own.Max(hold => hold.Until));
    }
}
