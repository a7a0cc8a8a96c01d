using System.Net;
using NightWatch.Delivery.Mail;
using NightWatch.Pages.Security;

namespace NightWatch.Service.Settings;

/// <summary>Section "Service".</summary>
public sealed class ServiceOptions
{
    public const string Section = "Service";

    internal const int MostStopSeconds = 300;

    private const int LeastKeyLength = 16;

    /// <summary>Address that the service listens on for pages, health and metrics; loopback unless a proxy needs otherwise.</summary>
    public string Address { get; set; } = "127.0.0.1";

    /// <summary>Port that it listens on; 0: any free one.</summary>
    public int Port { get; set; } = 5380;

    /// <summary>Seconds between two looks at what is due.</summary>
    public int TickSeconds { get; set; } = 30;

    /// <summary>Seconds that a stop waits for the pass and the letter in hand.</summary>
    public int StopSeconds { get; set; } = 25;

    /// <summary>Seconds after which another process takes over what a dead one was looking at; renewed while it lives.</summary>
    public int PassLeaseSeconds { get; set; } = 60;

    /// <summary>This process's name where several share a PostgreSQL database, for their operator; empty: the machine's.</summary>
    public string NodeName { get; set; } = "";

    /// <summary>Domain of the letters' Message-IDs and calendar entries; empty: that of the mail's From.</summary>
    public string MessageIdDomain { get; set; } = "";

    /// <summary>
    /// File that holds the secret behind Message-IDs and calendar entries, so that nobody guesses one from an address; empty: none.
    /// </summary>
    public string IdKeyFile { get; set; } = "";

    /// <summary>Where readers reach the pages, "https://night.example.org/"; empty: letters carry no links.</summary>
    public string PagesBase { get; set; } = "";

    /// <summary>Mail address or URL for the List-Unsubscribe header of letters without pages; empty: none.</summary>
    public string ListUnsubscribe { get; set; } = "";

    /// <summary>Zone data (NodaTime's .nzd) in place of those inside the program; empty: those.</summary>
    public string ZoneFile { get; set; } = "";

    /// <summary>
    /// Who may read /metrics besides this machine: addresses or networks, comma-separated, "10.0.0.7,fd00::/8"; empty: nobody else.
    /// </summary>
    public string MetricsFrom { get; set; } = "";

    /// <summary>Where metrics and traces are sent by OTLP over gRPC, "http://127.0.0.1:4317"; empty: nowhere.</summary>
    public string OtlpEndpoint { get; set; } = "";

    /// <summary>Share of ticks that are traced, 0 to 1, where there is an endpoint.</summary>
    public double TraceShare { get; set; } = 0.1;

    /// <summary>Addresses and networks of proxies whose X-Forwarded headers are believed, comma-separated; empty: nobody's.</summary>
    public string TrustedProxies { get; set; } = "";

    /// <summary>
    /// File that holds the password of the operator's page, at least 16 characters; empty: the page is open on this machine alone, and only
    /// without PagesBase.
    /// </summary>
    public string OperatorKeyFile { get; set; } = "";

    /// <summary>Anybody may sign up on the pages; false: watches come only from the operator's commands.</summary>
    public bool OpenSignUp { get; set; } = true;

    /// <summary>Where the pages and the health answers are found on this machine.</summary>
    internal Uri ListensAt => new UriBuilder("http", Address, Port).Uri;

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IEnumerable<string> Faults()
    {
        if (!IPAddress.TryParse(Address, out _)) yield return $"Service:Address is '{Address}'; accepted: an IP address such as 127.0.0.1.";
        if (Port is < 0 or > 65535) yield return $"Service:Port is {Port}; accepted: 0 to 65535.";
        if (TickSeconds is < 1 or > 300) yield return $"Service:TickSeconds is {TickSeconds}; accepted: 1 to 300.";
        if (StopSeconds is < 1 or > MostStopSeconds)
            yield return $"Service:StopSeconds is {StopSeconds}; accepted: 1 to {MostStopSeconds}.";
        if (PassLeaseSeconds is < 5 or > 3600) yield return $"Service:PassLeaseSeconds is {PassLeaseSeconds}; accepted: 5 to 3600.";
        if (NodeName.Length > 40 || !NodeName.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.'))
            yield return $"Service:NodeName is '{NodeName}'; accepted: up to 40 letters, digits, hyphens and dots, or empty.";
        if (MessageIdDomain.Length > 0 && Uri.CheckHostName(MessageIdDomain) != UriHostNameType.Dns)
            yield return $"Service:MessageIdDomain is '{MessageIdDomain}'; accepted: a domain name, or empty.";
        if (IdKeyFile.Length > 0 && SecretFile.Fault(IdKeyFile, "Service:IdKeyFile") is { } secret)
            yield return $"{secret.TrimEnd('.')}; accepted: a file that holds the secret and nothing else, or empty.";
        if (ZoneFile.Length > 0 && Settings.ZoneFile.Fault(ZoneFile) is { } zones) yield return zones;
        if (MetricsReaders.Fault(MetricsFrom) is { } reader)
            yield return $"Service:MetricsFrom holds '{reader}'; accepted: addresses or networks, comma-separated, such as " +
                "10.0.0.7,fd00::/8.";
        if (
            OtlpEndpoint.Length > 0
            && (!Uri.TryCreate(OtlpEndpoint, UriKind.Absolute, out var otlp) || otlp.Scheme is not ("https" or "http")))
            yield return $"Service:OtlpEndpoint is '{OtlpEndpoint}'; accepted: an absolute http or https address, or empty.";
        if (TraceShare is not (>= 0 and <= 1))
            yield return FormattableString.Invariant($"Service:TraceShare is {TraceShare}; accepted: 0 to 1.");
        if (PagesBase.Length > 0 && (!Uri.TryCreate(PagesBase, UriKind.Absolute, out var pages) || pages.Scheme is not ("https" or "http")))
            yield return $"Service:PagesBase is '{PagesBase}'; accepted: an absolute http or https address, or empty.";
        if (Forwarding.Parse(TrustedProxies) is null)
            yield return $"Service:TrustedProxies is '{TrustedProxies}'; accepted: addresses and networks such as 127.0.0.1, " +
                "10.0.0.0/24, or empty.";
        if (OperatorKeyFile.Length > 0 && (SecretFile.Fault(OperatorKeyFile, "Service:OperatorKeyFile") ?? ShortKey()) is { } key)
            yield return $"{key.TrimEnd('.')}; accepted: a file that holds a password of at least {LeastKeyLength} characters and " +
                "nothing else, or empty.";
    }

    // Who may guess 20 times an hour from each network must not find it.
    private string? ShortKey() =>
        SecretFile.Read(OperatorKeyFile).Trim() is { Length: < LeastKeyLength } key
            ? $"Service:OperatorKeyFile: the password in {OperatorKeyFile} is too short, {key.Length} characters"
            : null;
}
