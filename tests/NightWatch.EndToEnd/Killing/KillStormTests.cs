using System.Globalization;
using NightWatch.Store.Outbox;

namespace NightWatch.EndToEnd.Killing;

/// <summary>
/// Many kills at random steps of sending, counted against the mail server's own ledger. NW_KILLS sets how many (the short form is for
/// every build, a thousand for a release); the seed is in the name of the failing case.
/// </summary>
public sealed class KillStormTests
{
    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("NW_KILLS"), CultureInfo.InvariantCulture, out var kills) ? kills : 5;

    [Theory]
    [InlineData(20270306)]
    public async Task No_letter_is_lost_and_every_duplicate_was_in_the_servers_hands_when_the_kill_came(int seed)
    {
        var random = new Random(seed);
        await using var bench = new KillBench();
        var letters = 10 + 4 * Kills;
        await bench.LettersAreQueuedAsync(letters);

        var inServersHands = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            await using var killed = bench.Run();
            var stepsToLive = random.Next(1, 25);
            bench.Server.Reached = reached =>
            {
                if (Interlocked.Decrement(ref stepsToLive) != 0) return;
                killed.Kill();
                // A short text is in the network together with its dot: the server may read on after our death.
                if (reached is "text" or "dot" or "accepted") inServersHands++;
            };
            await killed.EndedAsync().WaitAsync(KillBench.Patience, TestContext.Current.CancellationToken);
        }

        bench.Server.Reached = _ => { };
        await using (var last = bench.Run())
        {
            await KillBench.UntilAsync(
                async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == letters, () => "Not all letters were sent:\n" + last.Log);
            Assert.Equal(0, await last.StopAsync());
        }

        var copies = bench.Server.Accepted.GroupBy(text => text).ToList();
        Assert.Equal(letters, copies.Count); // none lost; and a duplicate with other bytes would be one more here
        var duplicates = copies.Sum(copy => copy.Count() - 1);
        TestContext.Current.TestOutputHelper?.WriteLine($"{Kills} kills, {letters} letters, {duplicates} duplicates, {inServersHands} kills with a letter in the server's hands");
        Assert.InRange(duplicates, 0, inServersHands);
    }
}
