using NightWatch.Delivery.Mail;
using NightWatch.Pages.Subscribers;
using NightWatch.Store;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Suppression;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Feeds;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Pages.Operator;

/// <summary>What the operator sees.</summary>
internal sealed class OperatorDesk(WatchStore watches, SubscriberStore subscribers, OutboxStore outbox, BacklogStore backlog, FeedHoldStore holds, ForecastStore forecasts, SuppressionStore suppression, MailRations rations, FeedsOptions feeds, IClock clock)
{
    private const int MostDead = 100;

    private static readonly InstantPattern Minute = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

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
                waits.LastAnswers.TryGetValue(id, out var at) ? $"{Ago(now - at)} ago" : "never",
                DayOf(await forecasts.CountSinceAsync(id, now - Duration.FromDays(1), stop), weather.BudgetOf(id)),
                HoldOf(held, id)));
        }

        return new OperatorModel(
            note,
            [
                ("Subscribers", Figure(await subscribers.CountAsync(stop))),
                ("Watches", $"{Figure(all)}, {Figure(resting)} of them resting"),
                ("Looks that are due", waits.OldestDueAt is { } due ? $"{Figure(waits.DueOpen)}, the oldest for {Ago(now - due)}" : "0"),
                ("Oldest letter that waits", waits.OldestLetterAt is { } letter ? $"written {Ago(now - letter)} ago" : "none waits"),
                ("Letters for sign-up and sign-in, last hour", asked < MailRations.MostAnHour ? $"{Figure(asked)} of at most {Figure(MailRations.MostAnHour)}" : $"{Figure(asked)}: as many as may be, so more are refused"),
            ],
            [.. (await outbox.CountAsync(stop)).OrderBy(pair => pair.Key).Select(pair => (pair.Key.ToString(), pair.Value))],
            [.. (await outbox.ListAsync(OutboxState.Dead, MostDead, stop)).Select(entry => LineOf(entry, now))],
            lines,
            [.. (await suppression.ListAsync(stop)).Select(entry => (Redaction.Of(entry.Address), entry.Code is null ? Redaction.Of(entry.Reason) : $"{entry.Code} {Redaction.Of(entry.Reason)}", Minute.Format(entry.At)))]);
    }

    private static DeadLetter LineOf(OutboxEntry entry, Instant now) => new(
        entry.Id, entry.Kind, Redaction.Of(entry.Recipient), Minute.Format(entry.CreatedAt), Minute.Format(entry.NotAfter), entry.LastReply?.Text ?? "nothing", entry.NotAfter >= now);

    private static string DayOf(long answers, FeedBudget? budget) => budget is not { } most
        ? Figure(answers)
        : $"{Figure(answers)}, about {Figure((long)Math.Ceiling(answers * most.CallsAnAnswer))} of its {Figure(most.CallsADay)} calls a day";

    private static string HoldOf(IReadOnlyList<FeedHold> held, string feed)
    {
        var own = held.Where(hold => hold.Feed == feed).ToArray();
        if (own.FirstOrDefault(hold => hold.Cell is null) is { } whole) return $"at all until {Minute.Format(whole.Until)} UTC";
        return own.Length == 0 ? "no" : $"for {Figure(own.Length)} places, the last until {Minute.Format(own.Max(hold => hold.Until))} UTC";
    }

    private static string Ago(Duration age) => age.TotalMinutes < 120 ? FormattableString.Invariant($"{age.TotalMinutes:0} min") : age.TotalHours < 48 ? FormattableString.Invariant($"{age.TotalHours:0} h") : FormattableString.Invariant($"{age.TotalDays:0} days");

    private static string Figure(long count) => count.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture);
}
