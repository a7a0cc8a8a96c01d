using System.Collections.Frozen;
using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;
using NightWatch.Pages.Address;

namespace NightWatch.Pages.Assets;

/// <summary>One file of style, script or drawing.</summary>
/// <param name="Name">"site.css".</param>
/// <param name="HashedName">"site.3f9a0c1d22.css": a change of the file is a change of the name, so that it is cached for ever.</param>
/// <param name="ContentType">With its character set.</param>
/// <param name="Bytes">As written.</param>
internal sealed record PageAsset(string Name, string HashedName, string ContentType, byte[] Bytes)
{
    private readonly Lazy<byte[]> packed = new(() => Pack(Bytes));

    /// <summary>The same by Brotli (RFC 7932), from the first time that somebody asks: packing all of them is a fifth of a start.</summary>
    public byte[] Packed => packed.Value;

    private static byte[] Pack(byte[] bytes)
    {
        var packed = new byte[BrotliEncoder.GetMaxCompressedLength(bytes.Length)];
        return BrotliEncoder.TryCompress(bytes, packed, out var length, quality: 9, window: 20)
            ? packed[..length]
            : throw new InvalidOperationException("An asset cannot be compressed.");
    }
}

/// <summary>The files of Pages/Assets/Files, which are inside the program. Nothing is ever fetched from another host.</summary>
internal sealed class PageAssets(PageRoot root)
{
    private const string Folder = "Assets/";

    private static readonly FrozenDictionary<string, string> ContentTypes = new Dictionary<string, string>
    {
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
        [".webmanifest"] = "application/manifest+json",
        [".png"] = "image/png",
        [".woff2"] = "font/woff2",
    }.ToFrozenDictionary();

    // From the first page on.
    private readonly Lazy<FrozenDictionary<string, PageAsset>> byName = new(() => Load().ToFrozenDictionary(asset => asset.Name));

    private FrozenDictionary<string, PageAsset>? byHashedName;

    /// <summary>Where a browser gets a file.</summary>
    /// <exception cref="KeyNotFoundException">There is none of that name.</exception>
    public string Url(string name) => root.To($"assets/{byName.Value[name].HashedName}");

    /// <summary>A file by its own name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of that name.</exception>
    public PageAsset this[string name] => byName.Value[name];

    /// <summary>Serves them.</summary>
    public void Map(IEndpointRouteBuilder routes) => routes.MapGet("/assets/{file}", (string file, HttpContext context) =>
    {
        byHashedName ??= byName.Value.Values.ToFrozenDictionary(asset => asset.HashedName);
        if (!byHashedName.TryGetValue(file, out var asset)) return Results.NotFound();
        context.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        context.Response.Headers.Vary = HeaderNames.AcceptEncoding;
        if (!TakesBrotli(context)) return Results.Bytes(asset.Bytes, asset.ContentType);
        context.Response.Headers.ContentEncoding = "br";
        return Results.Bytes(asset.Packed, asset.ContentType);
    });

    private static bool TakesBrotli(HttpContext context) =>
        StringWithQualityHeaderValue.TryParseList(context.Request.Headers.AcceptEncoding, out var encodings)
        && encodings.Any(e => e.Value == "br" && e.Quality is null or > 0);

    private static IEnumerable<PageAsset> Load()
    {
        var assembly = typeof(PageAssets).Assembly;
        foreach (var resource in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(resource)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            var name = resource[Folder.Length..];
            var hash = Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 6));
            var extension = Path.GetExtension(name);
            yield return new PageAsset(name, $"{Path.GetFileNameWithoutExtension(name)}.{hash}{extension}", ContentTypes[extension], bytes);
        }
    }
}
