using System.Security.Cryptography;
using Microsoft.Extensions.Configuration;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Service.Commands.Checks;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store;
using NightWatch.Watchkeeping.Forecasts;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands.Checks;

public sealed class DnsCheckTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-dns-").FullName;
    private readonly RSA key = RSA.Create(2048);

    private string Published => "v=DKIM1; k=rsa; p=" + Convert.ToBase64String(key.ExportSubjectPublicKeyInfo());

    public void Dispose()
    {
        key.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Records_that_fit_are_well()
    {
        using var zone = new DnsZone(
            ("night.example.org", ["v=spf1 a:relay.example.org -all", "some-other-service=1"]),
            ("nw1._domainkey.night.example.org", [Published]),
            ("_dmarc.night.example.org", ["v=DMARC1; p=quarantine"]));

        var said = await SaidAsync(zone, signed: true);

        Assert.Equal(["Ok", "Ok", "Ok"], said.Select(finding => finding.Level.ToString()));
        Assert.Contains("v=spf1 a:relay.example.org -all", said[0].Text, StringComparison.Ordinal);
        Assert.Contains("v=DMARC1; p=quarantine", said[2].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_missing_is_advice_that_says_what_to_publish_and_no_fault()
    {
        using var zone = new DnsZone();

        var said = await SaidAsync(zone, signed: true);

        Assert.All(said, finding => Assert.Equal(Level.Warning, finding.Level));
        Assert.Contains("\"v=spf1", said[0].Text, StringComparison.Ordinal);
        Assert.Contains($"TXT \"{Published}\"", said[1].Text, StringComparison.Ordinal);
        Assert.Contains("_dmarc.night.example.org", said[2].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_policy_of_the_domain_above_holds_for_the_one_below()
    {
        using var zone = new DnsZone(("_dmarc.example.org", ["v=DMARC1; p=none"]));

        Assert.Equal("DMARC of example.org: v=DMARC1; p=none", (await SaidAsync(zone, signed: false))[2].Text);
    }

    [Fact]
    public async Task A_key_of_another_pair_is_told_since_every_signature_would_fail()
    {
        using var other = RSA.Create(2048);
        using var zone = new DnsZone(
            ("nw1._domainkey.night.example.org", ["v=DKIM1; p=" + Convert.ToBase64String(other.ExportSubjectPublicKeyInfo())]));

        Assert.Contains("does not belong", (await SaidAsync(zone, signed: true))[1].Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("v=spf1 +all", "everybody")]
    [InlineData("v=spf1 -all|v=spf1 mx -all", "2 SPF records")] // RFC 7208, 4.5: more than one is a permanent error
    public async Task A_sender_policy_that_is_none_is_told(string texts, string told)
    {
        using var zone = new DnsZone(("night.example.org", texts.Split('|')));

        var spf = (await SaidAsync(zone, signed: false))[0];

        Assert.Equal(Level.Warning, spf.Level);
        Assert.Contains(told, spf.Text, StringComparison.Ordinal);
    }

    private async Task<IReadOnlyList<Finding>> SaidAsync(DnsZone zone, bool signed)
    {
        var keyFile = Path.Combine(folder, "dkim.pem");
        await File.WriteAllTextAsync(keyFile, key.ExportPkcs8PrivateKeyPem(), TestContext.Current.CancellationToken);
        var settings = new AllSettings(
            new ConfigurationBuilder().Build(),
            new DatabaseOptions(),
            new FeedsOptions(),
            new MailOptions
            {
                Transport = "smtp",
                From = "NightWatch <watch@night.example.org>",
                Security = "none",
                Dkim = signed ? new DkimOptions { Domain = "night.example.org", Selector = "nw1", KeyFile = keyFile } : new DkimOptions(),
            },
            new OutboxOptions(),
            new ServiceOptions());
        Assert.Empty(settings.Mail.Faults());
        var shell = new Shell(Stream.Null, TextWriter.Null, new FakeClock(Instant.FromUtc(2027, 3, 4, 18, 0)), folder);
        return await DnsCheck.RunAsync(new CheckBench(settings, shell, zone.Address), TestContext.Current.CancellationToken);
    }
}
