using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Ticking;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Passes;

/// <summary>
/// The machine's clock is put right, or wrong, or the machine slept: minutes to days, both ways, under the service's own ticks.
/// </summary>
public sealed class ClockJumpTests : IAsyncLifetime
{
    private static readonly Instant Start = Instant.FromUtc(2027, 5, 25, 6, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-jumps-").FullName;
    private readonly WrongClock clock = new(Start);
    private ServiceProvider parts = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        parts = await RehearsalParts.StartAsync(folder, clock);
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData(-26 * 60)]
    [InlineData(45)]
    [InlineData(3 * 24 * 60)]
    public async Task After_a_jump_the_service_goes_on_and_says_nothing_twice(int minutes)
    {
        await LiveAsync(Duration.FromHours(36));
        clock.Now += Duration.FromMinutes(minutes);
        var jumped = clock.Now;
        await LiveAsync(Duration.FromHours(48));

        var letters = await parts.GetRequiredService<OutboxStore>().ListAsync(null, 1000, Cancel);
        Assert.Equal(letters.Count, letters.Select(letter => letter.MessageId).Distinct().Count());
        Assert.DoesNotContain(
            letters,
            letter =>
                letter.State is OutboxState.Pending or OutboxState.Sending or OutboxState.Retry
                && letter.NotBefore < clock.Now - Duration.FromHours(12));
        // Every watch is looked at again in the evenings after the jump, and nothing that is over stays due.
        foreach (var watch in Cast.Watches)
        {
            var tomorrow = jumped.InZone(watch.Site.Zone).Date.PlusDays(1);
            var looks = await parts.GetRequiredService<VerdictStore>().OfNightAsync(watch.Id, tomorrow.PlusDays(1), Cancel);
            Assert.Contains(looks, look => look.Pass == PassKind.Evening);
        }

        Assert.True(await parts.GetRequiredService<DueStore>().NextAsync(Cancel) > clock.Now - Duration.FromHours(2));
    }

    /// <summary>A tick every hour.</summary>
    private async Task LiveAsync(Duration time)
    {
        var ticker = parts.GetRequiredService<Ticker>();
        for (var end = clock.Now + time; clock.Now < end; clock.Now += Duration.FromHours(1))
        {
            await ticker.TickAsync(Cancel);
            Assert.Null(ticker.Trouble);
        }
    }

    private sealed class WrongClock(Instant now) : TimeProvider, IClock
    {
        public Instant Now { get; set; } = now;

        public Instant GetCurrentInstant() => Now;

        public override DateTimeOffset GetUtcNow() => Now.ToDateTimeOffset();
    }
}
