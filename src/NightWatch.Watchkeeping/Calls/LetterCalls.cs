using System.Security.Cryptography;
using System.Text;
using NightWatch.Letters;
using NightWatch.Letters.Calls;
using NightWatch.Letters.Drafts;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Watchkeeping.Calls;

/// <summary>
/// The outbox rows of a letter: the mail, and a call for each address that its watches name, unless calls are switched off.
/// </summary>
internal sealed class LetterCalls(WebhookOptions options, LetterWriter writer)
{
    /// <summary>The mail first.</summary>
    public IEnumerable<OutboxDraft> DraftsOf(LetterDraft draft, Letter letter, Instant now)
    {
        WatchNight[] about = [.. draft.Orders.Select(order => new WatchNight(order.Plan.Watch.Id, order.Plan.Night))];
        var mail = OutboxDraft.Of(letter, about, now);
        yield return mail with { TellsNewsTo = draft.TellsNews ? draft.Orders[0].Plan.Watch.Subscriber.Address : null };
        if (!options.Enabled) yield break;
        foreach (var url in draft.Orders.Select(order => order.Plan.Watch.Letters.Webhook).OfType<string>().Distinct())
        {
            yield return mail with
            {
                DedupeKey = $"call|{url}|{mail.DedupeKey}",
                MessageId = $"call.{IdOf(url)}.{mail.MessageId}",
                Recipient = url,
                Channel = LetterChannel.Webhook,
                Mime = LetterCall.Body(draft, letter, writer.Head.Links),
            };
        }
    }

    // Two addresses of one letter are two messages to the outbox.
    private static string IdOf(string url) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(url)).AsSpan(0, 6));
}
