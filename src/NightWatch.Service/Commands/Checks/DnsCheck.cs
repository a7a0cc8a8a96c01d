using System.Security.Cryptography;
using DnsClient;
using NightWatch.Delivery.Mail;

namespace NightWatch.Service.Commands.Checks;

/// <summary>
/// What receivers look up about the sender: SPF (RFC 7208), the DKIM key (RFC 6376) and DMARC (RFC 7489). Advice only: a relay that
/// rewrites the sender or signs for us may make each of them right in its own way.
/// </summary>
internal static class DnsCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    public static async Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var mail = bench.Settings.Mail;
        if (!mail.IsSmtp || mail.Faults().Count > 0) return [];
        var domain = mail.ReadFrom().Domain;
        if (!domain.Contains('.', StringComparison.Ordinal))
            return [Finding.Warning("dns", $"Mail:From is of {domain}, which no receiver can look up.")];
        var options = bench.DnsServer is { } server ? new LookupClientOptions(server) : new LookupClientOptions();
        (options.Timeout, options.Retries, options.UseCache, options.ThrowDnsErrors) = (Patience, 1, false, false);
        var dns = new LookupClient(options);
        try
        {
            return [await SpfAsync(dns, domain, stop), await DkimAsync(dns, mail.Dkim, domain, stop), await DmarcAsync(dns, domain, stop)];
        }
        catch (DnsResponseException failure)
        {
            return
            [
                Finding.Warning(
                    "dns", $"SPF, DKIM and DMARC of {domain} were not looked up: {failure.Message.Split('\n')[0].TrimEnd('.')}."),
            ];
        }
    }

    private static async Task<Finding> SpfAsync(LookupClient dns, string domain, CancellationToken stop)
    {
        var records = await TextAsync(dns, domain, "v=spf1", stop);
        return records.Count switch
        {
            0 => Finding.Warning("dns", $"{domain} has no SPF record; publish TXT \"v=spf1 a:YOUR-RELAY -all\" there."),
            > 1 => Finding.Warning("dns", $"{domain} has {records.Count} SPF records, which counts as none (RFC 7208, 4.5); keep one."),
            _ when records[0].Contains("+all", StringComparison.OrdinalIgnoreCase) => Finding.Warning(
                "dns", $"SPF of {domain} lets everybody send (+all)."),
            _ => Finding.Ok("dns", $"SPF of {domain}: {records[0]}"),
        };
    }

    private static async Task<Finding> DkimAsync(LookupClient dns, DkimOptions dkim, string domain, CancellationToken stop)
    {
        if (!dkim.IsSet)
            return Finding.Ok(
                "dns",
                "DKIM is left to the relay (Mail:Dkim is empty); its signature must cover List-Unsubscribe and List-Unsubscribe-Post.");
        var name = $"{dkim.Selector}._domainkey.{dkim.Domain}";
        // The version tag may be left out (RFC 6376, 3.6.1).
        var records = (await TextAsync(dns, name, "", stop)).Where(record => record.Contains("p=", StringComparison.Ordinal)).ToList();
        if (records.Count != 1)
            return Finding.Warning(
                "dns",
                $"{name} has {(records.Count == 0 ? "no DKIM key" : $"{records.Count} DKIM keys")}; publish TXT \"v=DKIM1; k=rsa; " +
                $"p={PublicKey(dkim)}\" there.");
        var published = records[0]
            .Split(';', StringSplitOptions.TrimEntries)
            .FirstOrDefault(tag => tag.StartsWith("p=", StringComparison.Ordinal))
            ?[2..].Replace(" ", "", StringComparison.Ordinal);
        if (published != PublicKey(dkim))
            return Finding.Warning("dns", $"the DKIM key at {name} does not belong to Mail:Dkim:KeyFile; every signature fails.");
        return IsUnder(domain, dkim.Domain)
            ? Finding.Ok("dns", $"DKIM key at {name} belongs to Mail:Dkim:KeyFile.")
            : Finding.Warning(
                "dns",
                $"Mail:Dkim:Domain {dkim.Domain} is not the domain of Mail:From ({domain}), so that DMARC does not count the signature.");
    }

    private static async Task<Finding> DmarcAsync(LookupClient dns, string domain, CancellationToken stop)
    {
        // Without the public suffix list the organizational domain is looked for upwards, never at a top-level domain.
        for (var at = domain; at.Contains('.', StringComparison.Ordinal); at = at[(at.IndexOf('.', StringComparison.Ordinal) + 1)..])
        {
            if (await TextAsync(dns, "_dmarc." + at, "v=DMARC1", stop) is [var record, ..])
                return Finding.Ok("dns", $"DMARC of {at}: {record}");
        }

        return Finding.Warning(
            "dns",
            $"{domain} has no DMARC record; publish TXT \"v=DMARC1; p=none; rua=mailto:YOU\" at _dmarc.{domain}, and raise p once the " +
            "reports are clean.");
    }

    private static async Task<IReadOnlyList<string>> TextAsync(LookupClient dns, string name, string start, CancellationToken stop)
    {
        var answer = await dns.QueryAsync(name, QueryType.TXT, cancellationToken: stop);
        if (answer.HasError && answer.Header.ResponseCode != DnsHeaderResponseCode.NotExistentDomain)
            throw new DnsResponseException($"{name}: {answer.ErrorMessage}");
        return
        [
            .. answer
                .Answers.TxtRecords()
                .Select(record => string.Concat(record.Text))
                .Where(text => text.StartsWith(start, StringComparison.OrdinalIgnoreCase)),
        ];
    }

    private static bool IsUnder(string domain, string parent) =>
        domain.Equals(parent, StringComparison.OrdinalIgnoreCase) || domain.EndsWith("." + parent, StringComparison.OrdinalIgnoreCase)
        || parent.EndsWith("." + domain, StringComparison.OrdinalIgnoreCase);

    private static string PublicKey(DkimOptions dkim)
    {
        using var key = RSA.Create();
        key.ImportFromPem(File.ReadAllText(dkim.KeyFile));
        return Convert.ToBase64String(key.ExportSubjectPublicKeyInfo());
    }
}
