using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Databases;

/// <summary>
/// A promise that both databases keep: each test class stands here once as the promises, and twice as "on SQLite" and "on PostgreSQL".
/// </summary>
public abstract class StoreTest(TestDatabase tested) : IAsyncLifetime
{
    protected TestDatabase Tested { get; } = tested;

    protected Database Database => Tested.Database;

    protected static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => Tested.InitializeAsync();

    public ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return Tested.DisposeAsync();
    }
}
