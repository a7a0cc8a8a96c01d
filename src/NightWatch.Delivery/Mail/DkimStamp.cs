using MimeKit;
using MimeKit.Cryptography;

namespace NightWatch.Delivery.Mail;

/// <summary>Signs a letter as it leaves (RFC 6376), relaxed in header and body so that refolding on the way does not break it.</summary>
internal sealed class DkimStamp(DkimOptions options)
{
    // What a reader sees, what threads the letters, and both unsubscribe headers, which receivers honour only when signed (RFC 8058, 4).
    private static readonly HeaderId[] Signed =
    [
        HeaderId.From, HeaderId.To, HeaderId.Subject, HeaderId.Date, HeaderId.MessageId, HeaderId.MimeVersion, HeaderId.ContentType,
        HeaderId.ReplyTo, HeaderId.InReplyTo, HeaderId.References, HeaderId.ListId, HeaderId.ListUnsubscribe, HeaderId.ListUnsubscribePost,
        HeaderId.AutoSubmitted,
    ];

    private readonly DkimSigner signer = new(options.KeyFile, options.Domain, options.Selector)
    {
        SignatureAlgorithm = DkimSignatureAlgorithm.RsaSha256,
        HeaderCanonicalizationAlgorithm = DkimCanonicalizationAlgorithm.Relaxed,
        BodyCanonicalizationAlgorithm = DkimCanonicalizationAlgorithm.Relaxed,
    };

    /// <returns>One sentence that names the key; null: the key can be used.</returns>
    public static string? Fault(DkimOptions options)
    {
        try
        {
            _ = new DkimStamp(options);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException or ArgumentException)
        {
            return $"Mail:Dkim:KeyFile: {options.KeyFile} is not a private key that can be read; accepted: a PEM file with an RSA key.";
        }
    }

    /// <summary>Adds the signature; nothing may change the letter after it.</summary>
    /// <remarks>The library keeps Content-Type, without which a letter could be read as something else, with the body.</remarks>
    public void Sign(MimeMessage message) =>
        signer.Sign(message, [.. Signed.Where(id => message.Headers.Contains(id) || message.Body?.Headers.Contains(id) == true)]);
}
