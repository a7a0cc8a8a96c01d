using NightWatch.Delivery.Mail;

namespace NightWatch.Delivery.Bounces;

/// <summary>
/// Section "Bounces": the mailbox that the letters' sender address leads to, read over IMAP. Without a host nothing is read.
/// </summary>
public sealed class BounceOptions
{
    public const string Section = "Bounces";

    /// <summary>The IMAP server; empty: reports about letters are not read.</summary>
    public string Host { get; set; } = "";

    /// <summary>The server's port.</summary>
    public int Port { get; set; } = 993;

    /// <summary>"tls" from the first byte, "starttls" (required, never skipped), or "none" (loopback only).</summary>
    public string Security { get; set; } = "tls";

    /// <summary>
    /// PEM file with the certificate of a private authority that the server's certificate must lead to; empty: the system's.
    /// </summary>
    public string CaFile { get; set; } = "";

    /// <summary>Name of the mailbox's user.</summary>
    public string UserName { get; set; } = "";

    /// <summary>File that holds the password and nothing else.</summary>
    public string PasswordFile { get; set; } = "";

    /// <summary>The folder that the reports come into.</summary>
    public string Folder { get; set; } = "INBOX";

    /// <summary>Minutes between two looks.</summary>
    public int EveryMinutes { get; set; } = 10;

    internal bool IsSet => Host.Length > 0;

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing. Reads the named files.</summary>
    public IEnumerable<string> Faults()
    {
        if (!IsSet) yield break;
        if (Port is < 1 or > 65535) yield return $"Bounces:Port is {Port}; accepted: 1 to 65535.";
        if (MailSecurity.Read(Security) is null) yield return $"Bounces:Security is \"{Security}\"; accepted: tls, starttls, none.";
        if (MailSecurity.IsUnsafe(Security, Host))
            yield return $"Bounces:Security none sends the password in the clear; accepted only for a loopback Bounces:Host, not " +
                $"\"{Host}\".";
        if (UserName.Length == 0) yield return "Bounces:UserName is empty; accepted: the mailbox's user name.";
        if (PasswordFile.Length == 0) yield return "Bounces:PasswordFile is empty; accepted: the file that holds the mailbox's password.";
        else if (SecretFile.Fault(PasswordFile, "Bounces:PasswordFile") is { } password) yield return password;
        if (CaFile.Length > 0 && PrivateAuthority.Fault(CaFile, "Bounces:CaFile") is { } authority) yield return authority;
        if (string.IsNullOrWhiteSpace(Folder)) yield return "Bounces:Folder is empty; accepted: a folder such as INBOX.";
        if (EveryMinutes is < 1 or > 1440) yield return $"Bounces:EveryMinutes is {EveryMinutes}; accepted: 1 to 1440.";
    }
}
