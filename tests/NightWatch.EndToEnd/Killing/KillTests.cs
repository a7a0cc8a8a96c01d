using System.Net;
using NightWatch.Store.Outbox;
using NightWatch.Weather.Tests.Loopback;

namespace NightWatch.EndToEnd.Killing;

/// <summary>kill -9 of the real program at each step from evaluation to acceptance, then a start as after a crash.</summary>
public sealed class KillTests
{
    /// <param name="window">Of the table in DEVELOPERS.md.</param>
    /// <param name="step">Of the conversation with the mail server, at which the program is killed.</param>
    /// <param name="copies">How often the one letter then arrives in all.</param>
    [Theory]
    [InlineData("W3", "connect", 1)]
    [InlineData("W4", "MAIL", 1)]
    [InlineData("W5", "text", 1)]
    [InlineData("W6", "dot", 2)]
    public async Task Killed_while_sending_the_letter_arrives_and_again_only_if_the_server_had_it_already(
        string window, string step, int copies)
    {
        Assert.NotNull(window);
        await using var bench = new KillBench();
        await bench.OneEveningPassIsDueAsync();

        // What was in the network at our death could still reach the server; in W5 it is lost there.
        if (step == "text") bench.Server.Script = bench.Server.Script with { DropInText = true };
        await using (var killed = bench.Run())
        {
            bench.Server.Reached = reached =>
            {
                if (reached == step) killed.Kill();
            };
            await killed.EndedAsync().WaitAsync(KillBench.Patience, TestContext.Current.CancellationToken);
            Assert.Equal(1, (await bench.CountAsync())[OutboxState.Sending]);
        }

        bench.Server.Reached = _ => { };
        bench.Server.Script = bench.Server.Script with { DropInText = false };
        await RestartAsync(bench, copies);
        Assert.Single(bench.Server.Accepted.Distinct());
    }

    [Fact]
    public async Task Killed_between_evaluation_and_sending_the_letter_arrives_once()
    {
        await using var bench = new KillBench();
        await bench.OneEveningPassIsDueAsync();

        // No mail server yet: the letter is written, queued and waits.
        await using (var killed = bench.Run(("Mail:Port", "1")))
        {
            await KillBench.UntilAsync(async () => (await bench.CountAsync()).Count > 0, () => "No letter was queued:\n" + killed.Log);
            killed.Kill();
            await killed.EndedAsync();
        }

        await RestartAsync(bench, copies: 1);
    }

    [Fact]
    public async Task Killed_during_the_evaluation_the_night_is_evaluated_again_and_the_letter_arrives_once()
    {
        await using var bench = new KillBench();
        await bench.OneEveningPassIsDueAsync();

        using var feed = new HttpListener();
        var address = $"http://127.0.0.1:{FreePort.Take()}/";
        feed.Prefixes.Add(address);
        feed.Start();
        await using (
            var killed = bench.Run(
                ("Feeds:Order", "met-norway"), ("Feeds:MetNorwayUrl", address), ("Feeds:Contact", "operator@example.org")))
        {
            await feed.GetContextAsync().WaitAsync(KillBench.Patience, TestContext.Current.CancellationToken);
            killed.Kill();
            await killed.EndedAsync();
            Assert.Empty(await bench.CountAsync());
        }

        await RestartAsync(bench, copies: 1);
    }

    private static async Task RestartAsync(KillBench bench, int copies)
    {
        await using var restarted = bench.Run();
        await KillBench.UntilAsync(
            async () => (await bench.CountAsync()).TryGetValue(OutboxState.Sent, out var sent) && sent == 1,
            () => "The letter was not sent:\n" + restarted.Log);

        Assert.Equal(0, await restarted.StopAsync());
        Assert.Equal(copies, bench.Server.Accepted.Count);
        Assert.Equal(new Dictionary<OutboxState, long> { [OutboxState.Sent] = 1 }, await bench.CountAsync());
    }
}
