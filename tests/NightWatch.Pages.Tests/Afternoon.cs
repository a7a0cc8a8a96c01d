using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Passes;

namespace NightWatch.Pages.Tests;

/// <summary>The second day, three in the afternoon: tonight was told as a go in the morning and has slipped since.</summary>
/// <remarks>
/// Who was told a go is told no less until the chance falls far, and the invented weather seldom falls so far within hours; so the weather
/// is of a seed in which tonight is marginal, and what the morning timeline told is put into the kept memory.
/// </remarks>
public sealed class Afternoon : IAsyncLifetime
{
    private const long SeedOfAMarginalNight = 10;

    internal PagesWorld World { get; private set; } = null!;

    internal IServiceProvider Parts => World.Parts;

    public async ValueTask InitializeAsync()
    {
        World = await PagesWorld.StartAsync(seed: SeedOfAMarginalNight);
        await World.LiveUntilAsync(PagesWorld.At(1, 15));
        var memory = await Parts
            .GetRequiredService<ToldNightStore>()
            .GetAsync(Cast.Watches[0].Id, Cast.FirstDay.PlusDays(1), TestContext.Current.CancellationToken);
        var told = memory.Night with
        {
            Told = VerdictClass.Go,
            ToldBy = LetterKind.MorningTimeline,
            ToldAt = PagesWorld.At(1, 8),
            ToldProbability = 0.8,
        };
        var commit = new PassCommit { Told = [memory with { Night = told }], BySubscriber = true };
        Assert.IsType<PassOutcome.Committed>(
            await Parts
                .GetRequiredService<PassStore>()
                .CommitAsync(commit, World.Clock.GetCurrentInstant(), TestContext.Current.CancellationToken));
    }

    public ValueTask DisposeAsync() => World.DisposeAsync();
}

/// <summary>Shared, since a world takes seconds to come to its second day.</summary>
[CollectionDefinition("afternoon")]
public sealed class AfternoonTests : ICollectionFixture<Afternoon>;

/// <summary>The third day, nine in the morning: last night was told of, tonight is to come.</summary>
public sealed class MorningAfter : IAsyncLifetime
{
    internal PagesWorld World { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        World = await PagesWorld.StartAsync();
        await World.LiveUntilAsync(PagesWorld.At(2, 9));
    }

    public ValueTask DisposeAsync() => World.DisposeAsync();
}
