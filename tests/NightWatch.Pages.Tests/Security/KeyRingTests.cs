using System.Xml.Linq;
using Microsoft.Data.Sqlite;
using NightWatch.Pages.Security;
using NightWatch.Store.Connections;
using NightWatch.Store.Secrets;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Pages.Tests.Security;

public sealed class KeyRingTests : IAsyncLifetime
{
    private static readonly Instant Now = Instant.FromUtc(2031, 3, 2, 12, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-keys-").FullName;
    private Database database = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = Database.Open(Path.Combine(folder, "keys.db"));
        await database.MigrateAsync(Cancel);
    }

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task One_bad_key_stops_no_other_and_is_reported_as_an_unreadable_row()
    {
        var secrets = new SecretStore(database);
        var ring = new KeyRing(secrets, new FakeClock(Now));
        ring.StoreElement(new XElement("key", new XAttribute("id", "first")), "key-1");
        await secrets.AddAsync("key-ring/key-2", "<key id="u8.ToArray(), Now, Cancel);
        ring.StoreElement(new XElement("key", new XAttribute("id", "third")), "key-3");

        Assert.Equal(["first", "third"], ring.GetAllElements().Select(key => key.Attribute("id")!.Value));

        Assert.Equal("secret key-ring/key-2", Assert.Single(database.Unreadable.Known).Name);
    }
}
