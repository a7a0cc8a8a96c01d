namespace NightWatch.Delivery.Mail;

/// <summary>Section "Mail:Dkim". All empty: letters are not signed here (a relay may).</summary>
public sealed class DkimOptions
{
    /// <summary>The signing domain (d=), the domain of Mail:From or its parent; empty: letters are not signed here.</summary>
    public string Domain { get; set; } = "";

    /// <summary>The selector (s=): the key is published at SELECTOR._domainkey.DOMAIN.</summary>
    public string Selector { get; set; } = "";

    /// <summary>PEM file with the private RSA key.</summary>
    public string KeyFile { get; set; } = "";

    internal bool IsSet => Domain.Length > 0 || Selector.Length > 0 || KeyFile.Length > 0;

    internal IEnumerable<string> Faults()
    {
        if (!IsSet) yield break;
        if (Domain.Length == 0)
            yield return "Mail:Dkim:Domain is empty; accepted: the signing domain, with Mail:Dkim:Selector and Mail:Dkim:KeyFile.";
        if (Selector.Length == 0)
            yield return "Mail:Dkim:Selector is empty; accepted: the selector, with Mail:Dkim:Domain and Mail:Dkim:KeyFile.";
        if (KeyFile.Length == 0)
            yield return "Mail:Dkim:KeyFile is empty; accepted: a PEM file, with Mail:Dkim:Domain and Mail:Dkim:Selector.";
        else if (Domain.Length > 0 && Selector.Length > 0 && DkimStamp.Fault(this) is { } fault) yield return fault;
    }
}
