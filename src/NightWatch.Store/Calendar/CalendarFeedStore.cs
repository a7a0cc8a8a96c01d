using System.Security.Cryptography;
using System.Text;
using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Calendar;

/// <summary>Which calendar feed is whose. Only hashes of the tokens stand here.</summary>
public sealed class CalendarFeedStore(Database database)
{
    /// <summary>The subscriber's feed, made at first use.</summary>
    /// <param name="address">The subscriber's mail address; its case does not matter.</param>
    /// <param name="tokenOf">The token of a generation.</param>
    /// <param name="now">When it is made.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    /// <returns>The token that opens it now.</returns>
    public Task<string> TokenAsync(string address, Func<long, string> tokenOf, Instant now, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(tokenOf);
        return database.WriteAsync(
            async session =>
            {
                await session.ExecuteAsync(
                    "INSERT INTO calendar_feed (address, hash, generation, made_at) VALUES (@address, @hash, 0, @now) ON CONFLICT DO " +
                    "NOTHING",
                    new { address = Subscriber.KeyOf(address), hash = HashOf(tokenOf(0)), now });
                return tokenOf(await GenerationAsync(session, address));
            },
            cancellationToken);
    }

    /// <summary>Ends the address given out so far; the new token opens the feed from now on.</summary>
    public Task<string> RevokeAsync(string address, Func<long, string> tokenOf, Instant now, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(tokenOf);
        return database.WriteAsync(
            async session =>
            {
                var token = tokenOf(await GenerationAsync(session, address) + 1);
                await session.ExecuteAsync(
                    """
                    INSERT INTO calendar_feed (address, hash, generation, made_at) VALUES (@address, @hash, 1, @now)
                    ON CONFLICT (address) DO UPDATE SET hash = excluded.hash, generation = calendar_feed.generation + 1,
                      made_at = excluded.made_at
                    """,
                    new { address = Subscriber.KeyOf(address), hash = HashOf(token), now });
                return token;
            },
            cancellationToken);
    }

    /// <summary>Whose feed a token opens, lower case; null: nobody's.</summary>
    public Task<string?> AddressOfAsync(string token, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            session => session.FirstAsync<string>("SELECT address FROM calendar_feed WHERE hash = @hash", new { hash = HashOf(token) }),
            cancellationToken);

    private static Task<long> GenerationAsync(Session session, string address) =>
        session.FirstAsync<long>(
            "SELECT generation FROM calendar_feed WHERE address = @address", new { address = Subscriber.KeyOf(address) });

    private static string HashOf(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
