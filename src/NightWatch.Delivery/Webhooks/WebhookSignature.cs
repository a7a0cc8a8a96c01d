using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using NightWatch.Letters.Links;

namespace NightWatch.Delivery.Webhooks;

/// <summary>
/// Signs calls so that a receiver knows whose they are and that they are fresh: HMAC-SHA256 over id, time and body, as the open
/// specification Standard Webhooks 1.0.0 has it (headers webhook-id, webhook-timestamp, webhook-signature).
/// </summary>
internal static class WebhookSignature
{
    private const string SecretPrefix = "whsec_";

    /// <summary>The secret of one receiving address, made from the key in the database: nothing to store, the same on every node.</summary>
    public static string SecretOf(ILinkSigner signer, string url) =>
        SecretPrefix
        + Convert.ToBase64String([
            .. Base64Url.DecodeFromChars(signer.Sign("webhook", url, "1")),
            .. Base64Url.DecodeFromChars(signer.Sign("webhook", url, "2")),
        ]);

    /// <summary>The value of the header webhook-signature.</summary>
    /// <param name="secret">With its prefix.</param>
    /// <param name="id">The value of webhook-id.</param>
    /// <param name="unixSeconds">The value of webhook-timestamp.</param>
    /// <param name="body">The bytes as they are sent.</param>
    public static string Of(string secret, string id, long unixSeconds, ReadOnlySpan<byte> body)
    {
        var key = Convert.FromBase64String(secret[SecretPrefix.Length..]);
        byte[] signed = [.. Encoding.UTF8.GetBytes(FormattableString.Invariant($"{id}.{unixSeconds}.")), .. body];
        return "v1," + Convert.ToBase64String(HMACSHA256.HashData(key, signed));
    }
}
