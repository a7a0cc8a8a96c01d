using System.Security.Cryptography;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Secrets;

/// <summary>Keys that all processes of an installation share. Whoever can read the database can read them.</summary>
public sealed class SecretStore(Database database)
{
    private static readonly RowName Name = new("secret", ["name"]);

    /// <summary>Reads a random key, which the first to ask makes.</summary>
    /// <param name="name">The secret's name.</param>
    /// <param name="bytes">Its length where it is made.</param>
    /// <param name="now">When it is made.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<byte[]> GetOrMakeAsync(string name, int bytes, Instant now, CancellationToken cancellationToken = default) =>
        await database.ReadAsync(session => FindAsync(session, name), cancellationToken)
        ?? await database.WriteAsync(
            async session =>
            {
                // Of two processes that make a key at once the second keeps the first one's.
                await AddAsync(session, name, RandomNumberGenerator.GetBytes(bytes), now);
                return (await FindAsync(session, name))!;
            },
            cancellationToken);

    /// <summary>Values whose names start so and that can be read, by name.</summary>
    /// <param name="prefix">Letters, digits, '/', '-'.</param>
    /// <param name="read">Reads one; where it throws, the value is left out and noted as a row that cannot be read.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<IReadOnlyList<T>> ListAsync<T>(string prefix, Func<byte[], T> read, CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session => session.ReadAsync<Row, T>(
                Name,
                row => read(row.Value),
                "SELECT name, value FROM secret WHERE substr(name, 1, @length) = @prefix ORDER BY name",
                new { prefix, length = prefix.Length }),
            cancellationToken);
        return rows.Readable;
    }

    /// <summary>Keeps a value; one that stands under the name already stays.</summary>
    public Task AddAsync(string name, byte[] value, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => AddAsync(session, name, value, now), cancellationToken);

    private static Task<byte[]?> FindAsync(Session session, string name) =>
        session.FirstAsync<byte[]>("SELECT value FROM secret WHERE name = @name", new { name });

    private static Task<int> AddAsync(Session session, string name, byte[] value, Instant now) =>
        session.ExecuteAsync(
            "INSERT INTO secret (name, value, made_at) VALUES (@name, @value, @now) ON CONFLICT DO NOTHING",
            new
            {
                name,
                value,
                now,
            });

    private sealed class Row
    {
        public required byte[] Value { get; init; }
    }
}
