using System.Data.Common;
using Dapper;

namespace NightWatch.Store.Connections;

/// <summary>An open connection, in a transaction when it writes. Every statement's values are parameters.</summary>
/// <param name="connection">An open connection.</param>
/// <param name="transaction">Null: it only reads.</param>
/// <param name="dialect">The database's words.</param>
/// <param name="unreadable">Where rows that cannot be read are noted.</param>
/// <param name="asked">Told of every statement with its values; null: nobody listens.</param>
/// <param name="cancellationToken">Cancels the call.</param>
internal sealed class Session(
    DbConnection connection,
    DbTransaction? transaction,
    Dialect dialect,
    UnreadableRows unreadable,
    Action<string, object?>? asked,
    CancellationToken cancellationToken)
{
    public Dialect Dialect { get; } = dialect;

    /// <returns>Rows changed.</returns>
    public Task<int> ExecuteAsync(string sql, object? values = null) => connection.ExecuteAsync(Command(sql, values));

    public async Task<IReadOnlyList<T>> QueryAsync<T>(string sql, object? values = null) =>
        (await connection.QueryAsync<T>(Command(sql, values))).AsList();

    /// <summary>Rows that hold documents, or words that stand for something: one that cannot be read is noted and stepped round.</summary>
    public async Task<Rows<T>> ReadAsync<TRow, T>(RowName name, Func<TRow, T> read, string sql, object? values = null)
    {
        var (readable, noted) = (new List<T>(), new List<UnreadableRow>());
        await using var rows = await connection.ExecuteReaderAsync(Command(sql, values));
        var parse = rows.GetRowParser<TRow>();
        while (await rows.ReadAsync(cancellationToken))
        {
            try
            {
                readable.Add(read(parse(rows)));
                if (!unreadable.IsEmpty) unreadable.Forget(name.Table, name.KeyOf(rows));
            }
            catch (Exception fault) when (fault is not (DbException or OutOfMemoryException))
            {
                noted.Add(name.Unreadable(rows, fault));
                unreadable.Note(noted[^1]);
            }
        }

        return new Rows<T>(readable, noted);
    }

    public Task<T?> FirstAsync<T>(string sql, object? values = null) => connection.QueryFirstOrDefaultAsync<T>(Command(sql, values));

    private CommandDefinition Command(string sql, object? values)
    {
        asked?.Invoke(sql, values);
        return new(sql, values, transaction, cancellationToken: cancellationToken);
    }
}
