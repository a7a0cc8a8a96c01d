using NightWatch.Store.Secrets;
using NightWatch.Store.Tests.Databases;

namespace NightWatch.Store.Tests.Secrets;

public sealed class SecretStoreOnSqlite() : SecretStorePromises(new SqliteTestDatabase());

public sealed class SecretStoreOnPostgres() : SecretStorePromises(new PostgresTestDatabase());

public abstract class SecretStorePromises(TestDatabase tested) : StoreTest(tested)
{
    [Fact]
    public async Task Processes_that_ask_at_once_get_the_same_key_and_keep_it()
    {
        var keys = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => new SecretStore(Database).GetOrMakeAsync("pages", 32, Given.Now, Cancel)));

        Assert.All(keys, key => Assert.Equal(keys[0], key));
        Assert.Equal(32, keys[0].Length);
        await using var next = Tested.Open();
        Assert.Equal(keys[0], await new SecretStore(next).GetOrMakeAsync("pages", 32, Given.Now, Cancel));
    }

    [Fact]
    public async Task A_ring_is_read_by_its_prefix_and_a_name_is_written_once()
    {
        var secrets = new SecretStore(Database);
        await secrets.AddAsync("ring/b", [2], Given.Now, Cancel);
        await secrets.AddAsync("ring/a", [1], Given.Now, Cancel);
        await secrets.AddAsync("ring/a", [9], Given.Now, Cancel);
        await secrets.AddAsync("ringing", [3], Given.Now, Cancel);

        Assert.Equal([[1], [2]], await secrets.ListAsync("ring/", value => value, Cancel));
    }

    [Fact]
    public async Task A_value_that_cannot_be_read_is_left_out_and_named()
    {
        var secrets = new SecretStore(Database);
        foreach (var name in (string[])["a", "b", "c"]) await secrets.AddAsync($"ring/{name}", [(byte)name[0]], Given.Now, Cancel);

        Assert.Equal(["a", "c"], await secrets.ListAsync("ring/", Read, Cancel));

        var bad = Assert.Single(Database.Unreadable.Known);
        Assert.Equal(("secret ring/b", "no key"), (bad.Name, bad.Why));

        static string Read(byte[] value) => value[0] == 'b' ? throw new FormatException("no key") : $"{(char)value[0]}";
    }
}
