using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace NightWatch.Delivery.Mail;

/// <summary>Trusts a mail server whose certificate leads to one private authority, and to nothing else.</summary>
internal sealed class PrivateAuthority(X509Certificate2 authority)
{
    public static PrivateAuthority Read(string path) => new(X509CertificateLoader.LoadCertificate(File.ReadAllBytes(path)));

    /// <returns>One sentence that names the key; null: it is a certificate.</returns>
    public static string? Fault(string path, string key)
    {
        try
        {
            Read(path);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or CryptographicException)
        {
            return $"{key}: {path} is not a certificate that can be read; accepted: a PEM or DER file.";
        }
    }

    /// <summary>The name must fit as always; only the root is another.</summary>
    public bool Accepts(object sender, X509Certificate? certificate, X509Chain? chain, SslPolicyErrors errors)
    {
        if (certificate is not X509Certificate2 server || (errors & ~SslPolicyErrors.RemoteCertificateChainErrors) != 0) return false;
        using var own = new X509Chain();
        own.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        own.ChainPolicy.CustomTrustStore.Add(authority);
        own.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        if (chain is not null) own.ChainPolicy.ExtraStore.AddRange(chain.ChainElements.Select(element => element.Certificate).ToArray());
        return own.Build(server);
    }
}
