namespace NightWatch.Pages.Address;

/// <summary>Where the pages stand: at the root of a host, or below a path of a host that has other pages too.</summary>
/// <param name="Base">As readers reach it; null: only on this machine, for trying out.</param>
internal sealed record PageRoot(Uri? Base)
{
    /// <summary>"" or "/night": goes before every path.</summary>
    public string Prefix { get; } = Base?.AbsolutePath.TrimEnd('/') ?? "";

    /// <summary>Readers come over TLS.</summary>
    public bool IsSecure => Base?.Scheme == Uri.UriSchemeHttps;

    /// <summary>An address within the pages.</summary>
    /// <param name="path">Without a leading slash: "sign-in", "" for the front page.</param>
    public string To(string path) => $"{Prefix}/{path}";
}
