using System.CommandLine;
using MimeKit;
using NightWatch.Service.Settings;
using NightWatch.Service.Wording;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Says line by line what is well and what is wrong.</summary>
internal static class CheckCommand
{
    public static Command Create(Shell shell, Option<string?> config)
    {
        var json = Given.Json();
        var test = Given.Text("--send-test", "Also sends one test letter to this address, through the configured transport.");
        var command = new Command("check", "What is wrong with configuration, database, feed, mail server, clock and zone data.") { json, test };
        command.SetAction(async (given, stop) =>
        {
            var findings = new List<Finding>();
            var to = given.GetValue(test) is { } address ? SendTest.AddressOf(address) : null;
            await foreach (var finding in FindingsAsync(shell, given.GetValue(config), to, stop))
            {
                findings.Add(finding);
                if (!given.GetValue(json)) shell.Say($"{(finding.Ok ? "ok   " : "WRONG")} {finding.About}: {finding.Text}");
            }

            if (given.GetValue(json)) Document.Write(shell.Output, new { Ok = findings.All(finding => finding.Ok), Findings = findings });
            return findings.All(finding => finding.Ok) ? Exit.Ok : Exit.Failure;
        });
        return command;
    }

    private static async IAsyncEnumerable<Finding> FindingsAsync(
        Shell shell, string? configPath, MailboxAddress? testTo, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken stop)
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
            yield return new Finding("configuration", false, unreadable);
            yield break;
        }

        var faults = settings.Faults();
        foreach (var fault in faults) yield return new Finding("configuration", false, fault);
        if (faults.Count == 0) yield return new Finding("configuration", true, "every setting is in its range.");
        foreach (var check in (IEnumerable<Func<AllSettings, Shell, CancellationToken, Task<Finding>>>)
            [DatabaseCheck.RunAsync, FeedCheck.RunAsync, MailCheck.RunAsync, ClockCheck.RunAsync, ZoneCheck.RunAsync])
        {
            yield return await check(settings, shell, stop);
        }

        if (testTo is not null) yield return await SendTest.RunAsync(settings, testTo, shell.Clock, stop);
    }
}

/// <summary>One line of the check.</summary>
/// <param name="About">What was looked at.</param>
/// <param name="Ok">Nothing is wrong with it.</param>
/// <param name="Text">What is so, or what is wrong.</param>
internal sealed record Finding(string About, bool Ok, string Text);
