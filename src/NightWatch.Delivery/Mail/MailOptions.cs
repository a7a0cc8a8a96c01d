using MimeKit;

namespace NightWatch.Delivery.Mail;

/// <summary>Section "Mail".</summary>
public sealed class MailOptions
{
    public const string Section = "Mail";

    private const int MostRate = 100_000;

    /// <summary>"folder" writes letters as .eml files; "smtp" sends them.</summary>
    public string Transport { get; set; } = "folder";

    /// <summary>Folder that .eml files are written to.</summary>
    public string Folder { get; set; } = "letters";

    /// <summary>Sender of every letter, in the header and on the envelope: "NightWatch &lt;watch@example.org&gt;".</summary>
    public string From { get; set; } = "NightWatch <nightwatch@localhost>";

    /// <summary>The mail server that letters are handed to.</summary>
    public string Host { get; set; } = "localhost";

    /// <summary>The server's port.</summary>
    public int Port { get; set; } = 587;

    /// <summary>"starttls" (required, never skipped), "tls" from the first byte, or "none" (loopback only).</summary>
    public string Security { get; set; } = "starttls";

    /// <summary>
    /// PEM file with the certificate of a private authority that the server's certificate must lead to; empty: the system's.
    /// </summary>
    public string CaFile { get; set; } = "";

    /// <summary>Name to authenticate with; empty: no authentication.</summary>
    public string UserName { get; set; } = "";

    /// <summary>File that holds the password and nothing else.</summary>
    public string PasswordFile { get; set; } = "";

    public DkimOptions Dkim { get; set; } = new();

    /// <summary>Seconds to connect, secure and authenticate.</summary>
    public int ConnectTimeoutSeconds { get; set; } = 30;

    /// <summary>Seconds for each reply before the text is handed over.</summary>
    public int ReplyTimeoutSeconds { get; set; } = 120;

    /// <summary>
    /// Seconds for the reply to the whole text. Less than the standard's ten minutes (RFC 5321, 4.5.3.2.6) makes duplicates.
    /// </summary>
    public int AcceptTimeoutSeconds { get; set; } = 600;

    /// <summary>Letters that the mail server is handed within any minute at most, by all processes together; 0: no limit of ours.</summary>
    public int MostPerMinute { get; set; }

    /// <summary>The same for the addresses of one domain.</summary>
    public int MostPerMinutePerDomain { get; set; }

    internal bool IsSmtp => Is(Transport, "smtp");

    internal MailboxAddress ReadFrom() => MailboxAddress.Parse(From);

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing. Reads the named files.</summary>
    public IReadOnlyList<string> Faults() => [.. Common(), .. IsSmtp ? Smtp().Concat(Dkim.Faults()) : []];

    private static bool Is(string value, string word) => string.Equals(value, word, StringComparison.OrdinalIgnoreCase);

    private IEnumerable<string> Common()
    {
        if (!IsSmtp && !Is(Transport, "folder")) yield return $"Mail:Transport is \"{Transport}\"; accepted: folder, smtp.";
        if (Is(Transport, "folder") && string.IsNullOrWhiteSpace(Folder))
            yield return "Mail:Folder is empty; accepted: a folder for the .eml files.";
        if (!MailboxAddress.TryParse(From, out var from) || !from.Address.Contains('@', StringComparison.Ordinal))
            yield return $"Mail:From is \"{From}\"; accepted: one address, such as NightWatch <watch@example.org>.";
    }

    private IEnumerable<string> Smtp()
    {
        if (string.IsNullOrWhiteSpace(Host)) yield return "Mail:Host is empty; accepted: the mail server's name.";
        if (Port is < 1 or > 65535) yield return $"Mail:Port is {Port}; accepted: 1 to 65535.";
        if (MailSecurity.Read(Security) is null) yield return $"Mail:Security is \"{Security}\"; accepted: starttls, tls, none.";
        if (MailSecurity.IsUnsafe(Security, Host))
            yield return $"Mail:Security none sends letters and password in the clear; accepted only for a loopback Mail:Host, not " +
                $"\"{Host}\".";
        if (UserName.Length > 0 && PasswordFile.Length == 0)
            yield return "Mail:PasswordFile is empty, but Mail:UserName is set; accepted: the file that holds the password.";
        if (UserName.Length == 0 && PasswordFile.Length > 0)
            yield return "Mail:UserName is empty, but Mail:PasswordFile is set; accepted: the user's name.";
        if (PasswordFile.Length > 0 && SecretFile.Fault(PasswordFile, "Mail:PasswordFile") is { } password) yield return password;
        if (CaFile.Length > 0 && PrivateAuthority.Fault(CaFile, "Mail:CaFile") is { } authority) yield return authority;
        if (MostPerMinute is < 0 or > MostRate)
            yield return $"Mail:MostPerMinute is {MostPerMinute}; accepted: 1 to {MostRate} letters, or 0 for no limit.";
        if (MostPerMinutePerDomain is < 0 or > MostRate)
            yield return $"Mail:MostPerMinutePerDomain is {MostPerMinutePerDomain}; accepted: 1 to {MostRate} letters, or 0 for no limit.";
        foreach (var (key, value, most) in new[]
        {
            (nameof(ConnectTimeoutSeconds), ConnectTimeoutSeconds, 300),
            (nameof(ReplyTimeoutSeconds), ReplyTimeoutSeconds, 600),
            (nameof(AcceptTimeoutSeconds), AcceptTimeoutSeconds, 3600),
        })
        {
            if (value < 1 || value > most) yield return $"Mail:{key} is {value}; accepted: 1 to {most} seconds.";
        }
    }
}
