using NightWatch.Delivery.Links;
using NightWatch.Letters.Links;
using NightWatch.Planning.Watches;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Pages.Links;

/// <summary>
/// Opens what a signed link is for. Whatever is wrong, the answer is the same null, so that a link tells nobody what exists.
/// </summary>
internal sealed class LinkGate(WatchStore watches, StoredLinkSigner signer)
{
    /// <summary>The watch of a night's link; null: no such watch, or not its signature.</summary>
    public Task<Watch?> NightAsync(string watchId, LocalDate night, string? key, CancellationToken stop) =>
        OpenAsync(watchId, key, watch => LetterLinks.NightKey(signer, watch, night), stop);

    /// <summary>The watch of a season or record link.</summary>
    public Task<Watch?> WatchAsync(string watchId, string? key, CancellationToken stop) =>
        OpenAsync(watchId, key, watch => LetterLinks.WatchKey(signer, watch), stop);

    /// <summary>The watch of an unsubscribe link.</summary>
    public Task<Watch?> UnsubscribeAsync(string watchId, string? key, CancellationToken stop) =>
        OpenAsync(watchId, key, watch => LetterLinks.UnsubscribeKey(signer, watch), stop);

    private async Task<Watch?> OpenAsync(string watchId, string? key, Func<Watch, string> right, CancellationToken stop) =>
        await watches.FindAsync(watchId, stop) is { } watch && LinkSignatures.AreEqual(right(watch), key) ? watch : null;
}
