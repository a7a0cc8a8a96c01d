using System.Net;
using System.Net.Sockets;
using NightWatch.Delivery.Links;
using NightWatch.Planning.Watches;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Pages.Subscribers;

/// <summary>
/// Letters that anybody can cause to any address (confirmations, sign-ins) are rationed by address and by network, so that a form cannot
/// bomb a mailbox. Keys are keyed hashes: the table tells nobody who asked.
/// </summary>
internal sealed partial class MailRations(RationStore rations, StoredLinkSigner signer, ILogger<MailRations> log)
{
    /// <summary>What all of it together may be in an hour, should many networks join hands.</summary>
    public const int MostAnHour = 300;

    private const string All = "letters";

    private static readonly Ration[] ToAddress =
    [new(Duration.FromHours(1), 3), new(Duration.FromDays(1), 6), new(Duration.FromDays(30), 20)];

    // A household or a hostel shares one.
    private static readonly Ration[] FromNetwork = [new(Duration.FromHours(1), 10), new(Duration.FromDays(1), 40)];

    private static readonly Ration[] InAll = [new(Duration.FromHours(1), MostAnHour)];

    // Said once while it lasts, not at every request of a flood.
    private readonly Lock saying = new();
    private Instant quietUntil = Instant.MinValue;

    /// <summary>One more letter that this network caused.</summary>
    public async Task<bool> TakeFromNetworkAsync(IPAddress? remote, Instant now, CancellationToken stop)
    {
        if (!await rations.TakeAsync(signer.Sign("network", NetworkOf(remote)), FromNetwork, now, stop)) return false;
        if (await rations.TakeAsync(All, InAll, now, stop)) return true;
        SayUsedUp(now);
        return false;
    }

    /// <summary>How many of <see cref="MostAnHour"/> the last hour took.</summary>
    public Task<long> LastHourAsync(Instant now, CancellationToken stop) => rations.CountAsync(All, now - Duration.FromHours(1), now, stop);

    /// <summary>One more letter to this address. Whether it is given must not show to a stranger.</summary>
    /// <param name="what">Which sort; each is rationed by itself, so that a flood of one leaves the others free.</param>
    /// <param name="address">The recipient's address.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="stop">Gives up.</param>
    public Task<bool> TakeToAddressAsync(string what, string address, Instant now, CancellationToken stop) =>
        rations.TakeAsync(signer.Sign("mailbox", what, MailboxOf(address)), ToAddress, now, stop);

    /// <summary>The network that one household has: an IPv4 address' /24, an IPv6 address' /64.</summary>
    public static string NetworkOf(IPAddress? remote)
    {
        if (remote is null) return "none";
        var address = remote.IsIPv4MappedToIPv6 ? remote.MapToIPv4() : remote;
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(address.AddressFamily == AddressFamily.InterNetwork ? 3 : 8).Clear();
        return new IPAddress(bytes).ToString();
    }

    private void SayUsedUp(Instant now)
    {
        lock (saying)
        {
            if (now < quietUntil) return;
            quietUntil = now + Duration.FromHours(1);
        }

        LogUsedUp(log, MostAnHour);
    }

    [LoggerMessage(
        402,
        LogLevel.Warning,
        "Sign-ups and sign-ins are refused: strangers caused {Most} letters within an hour, as many as may be; this is said once an hour")]
    private static partial void LogUsedUp(ILogger log, int most);

    // name+tag@host is one mailbox with many addresses.
    private static string MailboxOf(string address)
    {
        var plain = Subscriber.KeyOf(address);
        var (plus, at) = (plain.IndexOf('+', StringComparison.Ordinal), plain.LastIndexOf('@'));
        return plus > 0 && at > plus ? plain[..plus] + plain[at..] : plain;
    }
}
