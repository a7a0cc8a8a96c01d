using System.Net;
using MailKit.Security;

namespace NightWatch.Delivery.Mail;

/// <summary>How a conversation with a mail server is protected, as the settings Mail:Security and Bounces:Security say it.</summary>
internal static class MailSecurity
{
    /// <summary>The word's meaning, whatever its case; null: it has none.</summary>
    public static SecureSocketOptions? Read(string word) => word.ToLowerInvariant() switch
    {
        "starttls" => SecureSocketOptions.StartTls,
        "tls" => SecureSocketOptions.SslOnConnect,
        "none" => SecureSocketOptions.None,
        _ => null,
    };

    /// <summary>The same of a setting that was checked.</summary>
    public static SecureSocketOptions Of(string word) => Read(word) ?? SecureSocketOptions.StartTls;

    /// <summary>Nothing secret may go in the clear to this host.</summary>
    public static bool IsUnsafe(string word, string host) => Read(word) == SecureSocketOptions.None && !IsLoopback(host);

    private static bool IsLoopback(string host) =>
        string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));
}
