namespace NightWatch.Service.Mail;

/// <summary>Section "Mail".</summary>
public sealed class MailOptions
{
    public const string Section = "Mail";

    /// <summary>"folder" writes .eml files; "smtp" sends.</summary>
    public string Transport { get; set; } = "folder";

    /// <summary>Where the .eml files go.</summary>
    public string Folder { get; set; } = "letters";

    /// <summary>Header and envelope From: "NightWatch &lt;watch@example.org&gt;".</summary>
    public string From { get; set; } = "NightWatch <nightwatch@localhost>";

    public string Host { get; set; } = "localhost";

    public int Port { get; set; } = 587;

    /// <summary>"starttls" (required, never skipped), "tls" from the first byte, or "none" (loopback only).</summary>
    public string Security { get; set; } = "starttls";

    /// <summary>Empty: no authentication.</summary>
    public string UserName { get; set; } = "";

    /// <summary>File that holds the password and nothing else.</summary>
    public string PasswordFile { get; set; } = "";

    public DkimOptions Dkim { get; set; } = new();

    /// <summary>Seconds to connect, secure and authenticate.</summary>
    public int ConnectTimeoutSeconds { get; set; } = 30;

    /// <summary>Seconds for each reply before the text is handed over.</summary>
    public int ReplyTimeoutSeconds { get; set; } = 120;

    /// <summary>Seconds for the reply to the whole text; a shorter wait than the standard's ten minutes makes duplicates.</summary>
    public int AcceptTimeoutSeconds { get; set; } = 600;

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IReadOnlyList<string> Faults() => throw new NotImplementedException();
}

/// <summary>Section "Mail:Dkim". All empty: letters are not signed here (a relay may).</summary>
public sealed class DkimOptions
{
    public string Domain { get; set; } = "";

    public string Selector { get; set; } = "";

    /// <summary>PEM file with the private key.</summary>
    public string KeyFile { get; set; } = "";
}
