using System.Security.Cryptography;
using System.Text;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Letters.Drafts;

/// <summary>Stable names made of what a letter is about; nothing personal can be read from them.</summary>
/// <param name="domain">Right side of the ids.</param>
/// <param name="key">Secret of the instance, so that nobody can guess an id from an address; empty: none.</param>
internal sealed class LetterIds(string domain, ReadOnlyMemory<byte> key)
{
    private const string Base32 = "abcdefghijklmnopqrstuvwxyz234567";

    /// <summary>kind|watches|nights|recipient|revisions: the key under which the outbox knows a letter.</summary>
    public static string DedupeKey(LetterDraft draft)
    {
        var orders = draft.Orders;
        return string.Join('|',
            orders[0].Kind,
            string.Join('+', orders.Select(o => o.Plan.Watch.Id)),
            string.Join('+', orders.Select(o => LocalDatePattern.Iso.Format(o.Plan.Night))),
            orders[0].Plan.Watch.Subscriber.Address,
            string.Join('+', orders.Select(o => o.Before.Revision + 1)));
    }

    /// <summary>Message-ID of a letter, without angle brackets: the same for every attempt to send it.</summary>
    public string Message(string dedupeKey) => $"{Hash("letter|" + dedupeKey)}@{domain}";

    /// <summary>Root of the thread of one watch and night; no such message need exist.</summary>
    public string Thread(LetterOrder order) => $"night.{Hash("thread|" + NightKey(order.Plan.Watch, order.Plan.Night))}@{domain}";

    /// <summary>UID of the calendar entry of one watch and night.</summary>
    public string Calendar(LetterOrder order) => Calendar(order.Plan.Watch, order.Plan.Night);

    /// <summary>UID of the calendar entry of one watch and night.</summary>
    public string Calendar(Watch watch, LocalDate night) => $"{Hash("calendar|" + NightKey(watch, night))}@{domain}";

    /// <summary>Content-ID of the n-th picture of a letter.</summary>
    public string Picture(string dedupeKey, int n) => $"chart{n}.{Hash("picture|" + dedupeKey)[..16]}@{domain}";

    /// <summary>A MIME boundary: fixed, so that a letter written twice is the same bytes.</summary>
    public string Boundary(string dedupeKey, string part) => $"nw-{part}-{Hash($"boundary|{part}|{dedupeKey}")[..24]}";

    private static string NightKey(Watch watch, LocalDate night) =>
        $"{watch.Id}|{LocalDatePattern.Iso.Format(night)}|{watch.Subscriber.Address}";

    // 160 bits in base 32 (RFC 4648 alphabet, lower case): 32 characters that survive case folding.
    private string Hash(string text)
    {
        var bytes = HMACSHA256.HashData(key.Span, Encoding.UTF8.GetBytes(text));
        var id = new StringBuilder(32);
        for (var i = 0; i < 32; i++)
        {
            var bit = i * 5;
            var pair = (bytes[bit / 8] << 8) | bytes[bit / 8 + 1];
            id.Append(Base32[(pair >> (11 - bit % 8)) & 31]);
        }

        return id.ToString();
    }
}
