using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace NightWatch.Pages.Subscribers;

/// <summary>Random tokens for letters and cookies; only their hashes are kept.</summary>
internal static class Tokens
{
    private const int Bytes = 16;

    /// <summary>A new one: 128 random bits as 22 characters of base64url.</summary>
    public static string Make() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>SHA-256, hexadecimal. Random enough to need no salt.</summary>
    public static string HashOf(string? token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token ?? "")));

    /// <summary>Letters and digits without meaning, for ids that nobody shall guess.</summary>
    public static string Letters(int count) => RandomNumberGenerator.GetString("abcdefghijkmnpqrstuvwxyz23456789", count);
}
