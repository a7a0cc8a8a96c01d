using System.Net;
using NightWatch.Letters;
using NightWatch.Letters.Notices;
using NightWatch.Pages.Address;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Pages.Subscribers;

/// <summary>Lets subscribers in by a mailed link; there are no passwords.</summary>
internal sealed class SignInHandler(
    TicketStore tickets, WatchStore watches, OutboxStore outbox, MailRations rations, LetterWriter letters, PageAddress pages, IClock clock)
{
    /// <summary>Mails a link to an address that has a watch; to any other nothing. Which of both does not show.</summary>
    /// <returns>False: this network has asked too often.</returns>
    public async Task<bool> AskAsync(string address, IPAddress? remote, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        if (!await rations.TakeFromNetworkAsync(remote, now, stop)) return false;
        var token = Tokens.Make();
        // Written and rationed in any case, so that the time it takes tells nothing.
        var known = await watches.OfSubscriberAsync(address, stop);
        var notice = await letters.WriteSignInAsync(
            new SignInDraft(address, pages.Of($"enter?t={token}"), now, now + SignInDraft.Valid)
            {
                Zone = known.Count > 0 ? known[0].Site.Zone : DateTimeZone.Utc,
            },
            stop);
        if (!await rations.TakeToAddressAsync("sign-in", address, now, stop) || known.Count == 0) return true;
        await tickets.AddAsync(
            new Ticket(Tokens.HashOf(token), TicketPurpose.SignIn, Subscriber.KeyOf(address), null, now + SignInDraft.Valid), now, stop);
        await outbox.EnqueueAsync([OutboxDraft.Of(notice, now)], now, stop);
        return true;
    }

    /// <summary>Whether a token would let somebody in.</summary>
    public async Task<bool> IsGoodAsync(string? token, CancellationToken stop) =>
        await tickets.FindAsync(Tokens.HashOf(token), TicketPurpose.SignIn, clock.GetCurrentInstant(), stop) is not null;

    /// <summary>Uses a token up; null: it opens nothing.</summary>
    public async Task<string?> EnterAsync(string? token, CancellationToken stop) =>
        (await tickets.TakeAsync(Tokens.HashOf(token), TicketPurpose.SignIn, clock.GetCurrentInstant(), stop))?.Address;
}
