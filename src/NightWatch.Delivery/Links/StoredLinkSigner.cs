using NightWatch.Letters.Links;
using NightWatch.Store.Secrets;
using NodaTime;

namespace NightWatch.Delivery.Links;

/// <summary>
/// Signs with the key in the database, so that every process honours the links of every other, and a restart breaks none.
/// </summary>
internal sealed class StoredLinkSigner(SecretStore secrets, IClock clock) : ILinkSigner
{
    private const int KeyBytes = 32;

    private LinkSigner? signer;

    /// <summary>Reads the key, once at a start, as soon as the schema is up to date.</summary>
    public async Task LoadAsync(CancellationToken stop) =>
        signer = new LinkSigner(await secrets.GetOrMakeAsync("pages", KeyBytes, clock.GetCurrentInstant(), stop));

    /// <inheritdoc/>
    public string Sign(string purpose, params ReadOnlySpan<string> about) =>
        (signer ?? throw new InvalidOperationException("The signing key is not read yet.")).Sign(purpose, about);
}
