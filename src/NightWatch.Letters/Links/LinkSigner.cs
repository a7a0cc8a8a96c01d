using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace NightWatch.Letters.Links;

/// <summary>Makes the signatures that links carry: who has one may do what the link is for, without signing in.</summary>
public interface ILinkSigner
{
    /// <summary>Signature over a purpose and what it is about: 22 characters that need no escaping in an address.</summary>
    /// <param name="purpose">One word; a signature made for one purpose is none for another.</param>
    /// <param name="about">Ids, addresses, dates: no line breaks in them.</param>
    string Sign(string purpose, params ReadOnlySpan<string> about);
}

/// <summary>
/// Signs by HMAC-SHA256 (RFC 2104), cut to its first 16 bytes (RFC 2104, section 5), written as base64url (RFC 4648, section 5).
/// </summary>
/// <param name="key">Secret of the instance; the same for all its processes, so that each honours the others' links.</param>
public sealed class LinkSigner(ReadOnlyMemory<byte> key) : ILinkSigner
{
    private const int SignatureBytes = 16;

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">A part has a line break, which would let it pass for two parts.</exception>
    public string Sign(string purpose, params ReadOnlySpan<string> about)
    {
        var text = new StringBuilder(purpose);
        foreach (var part in about)
        {
            if (part.Contains('\n', StringComparison.Ordinal))
                throw new ArgumentException("A signed part has no line break.", nameof(about));
            text.Append('\n').Append(part);
        }

        return Base64Url.EncodeToString(HMACSHA256.HashData(key.Span, Encoding.UTF8.GetBytes(text.ToString())).AsSpan(0, SignatureBytes));
    }
}

/// <summary>Checks signatures.</summary>
public static class LinkSignatures
{
    /// <summary>Whether a signature is the right one, in a time that tells nothing of how nearly it is.</summary>
    /// <param name="right">As <see cref="ILinkSigner.Sign"/> makes it.</param>
    /// <param name="given">As the link carries it; null or anything else is wrong.</param>
    public static bool AreEqual(string right, string? given) =>
        given is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(right), Encoding.UTF8.GetBytes(given));
}
