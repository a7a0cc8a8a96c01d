using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Subscribers;

/// <summary>Who is signed in. A session is a row: deleting it signs out, wherever the cookie is.</summary>
public sealed class SessionStore(Database database)
{
    /// <summary>Begins one.</summary>
    /// <param name="hash">SHA-256 of the cookie's value, hexadecimal.</param>
    /// <param name="address">Whose; lower case.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="expiresAt">It ends then, unless it is prolonged.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public Task BeginAsync(string hash, string address, Instant now, Instant expiresAt, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            session =>
                session.ExecuteAsync(
                    "INSERT INTO session (hash, address, made_at, expires_at) VALUES (@hash, @address, @now, @expiresAt)",
                    new
                    {
                        hash,
                        address,
                        now,
                        expiresAt,
                    }),
            cancellationToken);

    /// <summary>Whose session it is, and when it ends; null: nobody's.</summary>
    public Task<SignedIn?> FindAsync(string hash, Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
                (
                    await session.FirstAsync<Row>(
                        "SELECT address, expires_at FROM session WHERE hash = @hash AND expires_at > @now", new { hash, now }))
                    is { } row
                    ? new SignedIn(row.Address, row.ExpiresAt)
                    : null,
            cancellationToken);

    /// <summary>Moves a session's end.</summary>
    public Task ProlongAsync(string hash, Instant expiresAt, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            session => session.ExecuteAsync("UPDATE session SET expires_at = @expiresAt WHERE hash = @hash", new { hash, expiresAt }),
            cancellationToken);

    /// <summary>Ends one.</summary>
    public Task EndAsync(string hash, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => session.ExecuteAsync("DELETE FROM session WHERE hash = @hash", new { hash }), cancellationToken);

    private sealed class Row
    {
        public required string Address { get; init; }

        public required Instant ExpiresAt { get; init; }
    }
}

/// <summary>A session that holds.</summary>
/// <param name="Address">Whose; lower case.</param>
/// <param name="ExpiresAt">Its end.</param>
public sealed record SignedIn(string Address, Instant ExpiresAt);
