using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Subscribers;

/// <summary>What a mailed token is for. A token for one purpose is none for another.</summary>
public enum TicketPurpose
{
    /// <summary>A watch that waits for its address to say yes.</summary>
    Confirm,

    /// <summary>The way to one's own watches.</summary>
    SignIn,
}

/// <summary>The right to do one thing once.</summary>
/// <param name="Hash">SHA-256 of the token, hexadecimal; the token itself is in the letter alone.</param>
/// <param name="Purpose">What for.</param>
/// <param name="Address">Whose; lower case.</param>
/// <param name="Body">What the purpose needs; null: nothing.</param>
/// <param name="ExpiresAt">It is worth nothing from then on.</param>
public sealed record Ticket(string Hash, TicketPurpose Purpose, string Address, string? Body, Instant ExpiresAt);

/// <summary>Tickets that are out.</summary>
public sealed class TicketStore(Database database)
{
    private const string Select =
        "SELECT hash, purpose, address, body, expires_at FROM ticket WHERE hash = @hash AND purpose = @purpose AND expires_at > @now";

    /// <summary>Keeps one.</summary>
    public Task AddAsync(Ticket ticket, Instant now, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        return database.WriteAsync(
            session =>
                session.ExecuteAsync(
                    "INSERT INTO ticket (hash, purpose, address, body, made_at, expires_at) VALUES (@Hash, @purpose, @Address, @Body, " +
                    "@now, @ExpiresAt)",
                    new
                    {
                        ticket.Hash,
                        purpose = ticket.Purpose.ToString(),
                        ticket.Address,
                        ticket.Body,
                        now,
                        ticket.ExpiresAt,
                    }),
            cancellationToken);
    }

    /// <summary>Looks at one without using it; null: unknown, used or out of date.</summary>
    public Task<Ticket?> FindAsync(string hash, TicketPurpose purpose, Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
                (
                    await session.FirstAsync<Row>(
                        Select,
                        new
                        {
                            hash,
                            purpose = purpose.ToString(),
                            now,
                        }))?.ToTicket(),
            cancellationToken);

    /// <summary>Uses one up; null: unknown, used or out of date.</summary>
    public Task<Ticket?> TakeAsync(string hash, TicketPurpose purpose, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => TakeAsync(session, hash, purpose, now), cancellationToken);

    internal static async Task<Ticket?> TakeAsync(Session session, string hash, TicketPurpose purpose, Instant now)
    {
        var row = await session.FirstAsync<Row>(Select, new { hash, purpose = purpose.ToString(), now });
        // Of two who come at once, one deletes the row.
        return row is not null && await session.ExecuteAsync("DELETE FROM ticket WHERE hash = @hash", new { hash }) == 1
            ? row.ToTicket()
            : null;
    }

    private sealed class Row
    {
        public required string Hash { get; init; }

        public required TicketPurpose Purpose { get; init; }

        public required string Address { get; init; }

        public string? Body { get; init; }

        public required Instant ExpiresAt { get; init; }

        public Ticket ToTicket() => new(Hash, Purpose, Address, Body, ExpiresAt);
    }
}
