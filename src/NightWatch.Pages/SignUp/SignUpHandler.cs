using System.Net;
using NightWatch.Letters;
using NightWatch.Letters.Notices;
using NightWatch.Pages.Address;
using NightWatch.Pages.Subscribers;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Pages.SignUp;

/// <summary>Takes sign-ups: a letter asks the address first, and only its answer makes a watch.</summary>
internal sealed class SignUpHandler(
    TicketStore tickets,
    SubscriberStore subscribers,
    WatchStore watches,
    OutboxStore outbox,
    MailRations rations,
    LetterWriter letters,
    PageAddress pages,
    IClock clock)
{
    /// <summary>Watches of one address, confirmed ones.</summary>
    public const int MostWatches = 25;

    /// <summary>Asks the address of a watch whether it wants it.</summary>
    /// <returns>False: this network has asked too often. Whether the address has, or is known, does not show.</returns>
    public async Task<bool> AskAsync(Watch watch, IPAddress? remote, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        if (!await rations.TakeFromNetworkAsync(remote, now, stop)) return false;
        var address = watch.Subscriber.Address;
        var token = Tokens.Make();
        var notice = await letters.WriteConfirmationAsync(
            new ConfirmationDraft(address, pages.Of($"confirm?t={token}"), now, now + ConfirmationDraft.Valid)
            {
                Place = watch.Site.Position,
                Zone = watch.Site.Zone,
            },
            stop);
        // The letter is written in any case, so that the time it takes tells nothing.
        if (!await rations.TakeToAddressAsync("confirm", address, now, stop)) return true;
        await tickets.AddAsync(
            new Ticket(
                Tokens.HashOf(token),
                TicketPurpose.Confirm,
                watch.Subscriber.Key(),
                SubscriberStore.Body(watch),
                now + ConfirmationDraft.Valid),
            now,
            stop);
        await outbox.EnqueueAsync([OutboxDraft.Of(notice, now)], now, stop);
        return true;
    }

    /// <summary>The watch that a token would confirm; null: the token opens nothing.</summary>
    public async Task<Watch?> FindAsync(string? token, CancellationToken stop) =>
        await tickets.FindAsync(Tokens.HashOf(token), TicketPurpose.Confirm, clock.GetCurrentInstant(), stop) is { Body: { } body }
            ? SubscriberStore.WatchOf(body)
            : null;

    /// <summary>Makes the watch; null: the token opens nothing (any more).</summary>
    public Task<Watch?> ConfirmAsync(string? token, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        return subscribers.ConfirmAsync(Tokens.HashOf(token), now, watch => [.. DueCalendar.Daily(watch, now, DuePlanner.Ahead)], stop);
    }

    /// <summary>Whether the address may have one more.</summary>
    public async Task<bool> HasRoomAsync(string address, CancellationToken stop) =>
        (await watches.OfSubscriberAsync(address, stop)).Count < MostWatches;
}
