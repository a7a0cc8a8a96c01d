using System.CommandLine;
using System.Net;
using System.Runtime.CompilerServices;
using MimeKit;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Says line by line what is well, what somebody should look at, and what is wrong.</summary>
internal static class CheckCommand
{
    /// <summary>The clock comes after all who may say what time it is.</summary>
    private static readonly (string About, Func<CheckBench, CancellationToken, Task<IReadOnlyList<Finding>>> RunAsync)[] Checks =
    [
        ("secrets", SecretsCheck.RunAsync),
        ("database", DatabaseCheck.RunAsync),
        ("feed", FeedCheck.RunAsync),
        ("mail", MailCheck.RunAsync),
        ("dns", DnsCheck.RunAsync),
        ("pages", PagesCheck.RunAsync),
        ("clock", ClockCheck.RunAsync),
        ("zone data", ZoneCheck.RunAsync),
    ];

    public static Command Create(Shell shell, Option<string?> config)
    {
        var json = Given.Json();
        var health = new Option<bool>("--health")
        {
            Description = "Only asks the running service whether it is ready; for a container's health check.",
        };
        var test = Given.Text("--send-test", "Also sends one test letter to this address, through the configured transport.", "address");
        var dns = Given.Text("--dns", "DNS server to ask, ADDRESS or ADDRESS:PORT; default whom the system asks.", "address");
        var command = new Command(
            "check",
            "What is wrong with configuration, secrets, database, disk, feeds, mail server, DNS records, pages, clock and zone data. " +
            "Exit 1 if anything is.")
        {
            json,
            test,
            dns,
            health,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var to = given.GetValue(test) is { } address ? SendTest.AddressOf(address) : null;
                var server = given.GetValue(dns) is { } name ? ServerOf(name) : null;
                var findings = new List<Finding>();
                await foreach (
                    var finding in given.GetValue(health)
                        ? HealthCheck.FindingsAsync(AllSettings.Read(shell.Directory, given.GetValue(config)), stop)
                        : FindingsAsync(shell, given.GetValue(config), to, server, stop))
                {
                    findings.Add(finding);
                    if (!given.GetValue(json)) shell.Say(finding.ToString());
                }

                var ok = findings.All(finding => finding.Level != Level.Fault);
                if (given.GetValue(json)) Document.Write(shell.Output, new { Ok = ok, Findings = findings });
                return ok ? Exit.Ok : Exit.Failure;
            });
        return command;
    }

    private static async IAsyncEnumerable<Finding> FindingsAsync(
        Shell shell, string? configPath, MailboxAddress? testTo, IPEndPoint? dns, [EnumeratorCancellation] CancellationToken stop)
    {
        AllSettings? settings = null;
        var unreadable = "";
        try
        {
            settings = AllSettings.Read(shell.Directory, configPath);
        }
        catch (BadInputException refused)
        {
            unreadable = refused.Message;
        }

        if (settings is null)
        {
            yield return Finding.Fault("configuration", unreadable);
            yield break;
        }

        var faults = settings.Faults();
        foreach (var fault in faults) yield return Finding.Fault("configuration", fault);
        if (faults.Count == 0) yield return Finding.Ok("configuration", "every setting is in its range.");
        var bench = new CheckBench(settings, shell, dns);
        foreach (var (about, check) in Checks)
        {
            foreach (var finding in await TryAsync(about, () => check(bench, stop))) yield return finding;
        }

        if (testTo is null) yield break;
        foreach (var finding in await TryAsync("test letter", async () => [await SendTest.RunAsync(settings, testTo, shell.Clock, stop)]))
            yield return finding;
    }

    /// <summary>A check that meets what it did not reckon with says so, and the others go on.</summary>
    private static async Task<IReadOnlyList<Finding>> TryAsync(string about, Func<Task<IReadOnlyList<Finding>>> check)
    {
        try
        {
            return await check();
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return [Finding.Fault(about, $"cannot be checked: {failure.Message.ReplaceLineEndings(" ").TrimEnd('.')}.")];
        }
    }

    private static IPEndPoint ServerOf(string text) => IPEndPoint.TryParse(text, out var server)
        ? new IPEndPoint(server.Address, server.Port == 0 ? 53 : server.Port)
        : throw new BadInputException($"--dns: '{text}' is not a server; accepted: ADDRESS or ADDRESS:PORT, such as 192.0.2.53.");
}
