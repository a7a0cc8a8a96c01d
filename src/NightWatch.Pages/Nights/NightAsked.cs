using NightWatch.Delivery.Links;
using NightWatch.Pages.Address;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Pages.Nights;

/// <summary>A request about one night, bound from its address, and what every answer to it needs.</summary>
internal sealed class NightAsked
{
    /// <summary>Of the address.</summary>
    public required string WatchId { get; init; }

    /// <summary>Of the address.</summary>
    public required string Night { get; init; }

    /// <summary>The link's signature.</summary>
    public string? K { get; init; }

    /// <summary>Says whether the signature opens the night.</summary>
    public required NightGate Gate { get; init; }

    /// <summary>Where the pages are.</summary>
    public required PageRoot Root { get; init; }

    /// <summary>Signs the links of the answer.</summary>
    public required StoredLinkSigner Signer { get; init; }

    /// <summary>The request itself.</summary>
    public required HttpContext Http { get; init; }

    /// <summary>Stops it.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>The night that the link opens; null: none.</summary>
    public Task<(Watch Watch, LocalDate Night)?> OpenAsync() => Gate.OpenAsync(WatchId, Night, K, Stop);

    /// <summary>The links that stand on the pages of a night.</summary>
    public NightPageLinks LinksOf(Watch watch, LocalDate night) => NightPageLinks.Of(watch, night, Root, Signer);

    /// <summary>A field of the form that was sent; null: it was not, as where a form's only button has no name.</summary>
    public async Task<string?> FieldAsync(string name) =>
        Http.Request.HasFormContentType && (await Http.Request.ReadFormAsync(Stop)).TryGetValue(name, out var value)
            ? value.ToString()
            : null;
}
