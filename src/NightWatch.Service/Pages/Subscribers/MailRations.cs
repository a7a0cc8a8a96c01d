using System.Net;
using System.Net.Sockets;
using NightWatch.Planning.Watches;
using NightWatch.Service.Pages.Links;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Service.Pages.Subscribers;

/// <summary>
/// Letters that anybody can cause to any address (confirmations, sign-ins) are rationed by address and by network, so that a form cannot
/// bomb a mailbox. Keys are keyed hashes: the table tells nobody who asked.
/// </summary>
internal sealed class MailRations(RationStore rations, StoredLinkSigner signer)
{
    private static readonly Ration[] ToAddress = [new(Duration.FromHours(1), 3), new(Duration.FromDays(1), 6), new(Duration.FromDays(30), 20)];

    // A household or a hostel shares one.
    private static readonly Ration[] FromNetwork = [new(Duration.FromHours(1), 10), new(Duration.FromDays(1), 40)];

    // What all of it together may be, should many networks join hands.
    private static readonly Ration[] InAll = [new(Duration.FromHours(1), 300)];

    /// <summary>One more letter that this network caused.</summary>
    public async Task<bool> TakeFromNetworkAsync(IPAddress? remote, Instant now, CancellationToken stop) =>
        await rations.TakeAsync(signer.Sign("network", NetworkOf(remote)), FromNetwork, now, stop) && await rations.TakeAsync("letters", InAll, now, stop);

    /// <summary>One more letter to this address. Whether it is given must not show to a stranger.</summary>
    /// <param name="what">Which sort; each is rationed by itself, so that a flood of one leaves the others free.</param>
    /// <param name="address">To whom.</param>
    /// <param name="now">When.</param>
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

    // name+tag@host is one mailbox with many addresses.
    private static string MailboxOf(string address)
    {
        var plain = Subscriber.KeyOf(address);
        var (plus, at) = (plain.IndexOf('+', StringComparison.Ordinal), plain.LastIndexOf('@'));
        return plus > 0 && at > plus ? plain[..plus] + plain[at..] : plain;
    }
}
