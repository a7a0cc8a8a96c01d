namespace NightWatch.Pages.Tests;

/// <summary>The second day, three in the afternoon: tonight was told as a go in the morning and has slipped since.</summary>
public sealed class Afternoon : IAsyncLifetime
{
    internal PagesWorld World { get; private set; } = null!;

    internal IServiceProvider Parts => World.Parts;

    public async ValueTask InitializeAsync()
    {
        World = await PagesWorld.StartAsync();
        await World.LiveUntilAsync(PagesWorld.At(1, 15));
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
