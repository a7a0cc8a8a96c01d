using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace NightWatch.Pages.Address;

/// <summary>Whole addresses for letters: never from a request's Host header, which its sender chooses.</summary>
internal sealed class PageAddress(PageRoot root, IServer server)
{
    /// <summary>An address within the pages, for a letter.</summary>
    /// <param name="path">With its query, without a leading slash.</param>
    public Uri Of(string path) => new(Base, path);

    // Without PagesBase the pages answer this machine alone, at the address the server listens on.
    private Uri Base => root.Base is { } given
        ? given.AbsoluteUri.EndsWith('/') ? given : new Uri(given.AbsoluteUri + "/")
        : new Uri((server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "http://127.0.0.1") + "/");
}
