using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;

namespace NightWatch.Store.News;

/// <summary>
/// Whom the next letter tells what an upgrade changed: those who had watches before it, each once. A migration puts them in; the letter
/// that tells it takes them out in the transaction that keeps the letter.
/// </summary>
public sealed class NewsStore(Database database)
{
    /// <summary>Whether the next letter to an address is to say what is new; the case of the address does not matter.</summary>
    public async Task<bool> IsOwedAsync(string address, CancellationToken cancellationToken = default) =>
        await database.ReadAsync(
            session =>
                session.FirstAsync<string>(
                    "SELECT address FROM news_owed WHERE address = @address", new { address = Subscriber.KeyOf(address) }),
            cancellationToken)
            is not null;

    /// <returns>False: another letter has told it meanwhile.</returns>
    internal static async Task<bool> TellAsync(Session session, string address) =>
        await session.ExecuteAsync("DELETE FROM news_owed WHERE address = @address", new { address = Subscriber.KeyOf(address) }) == 1;
}
