using System.Data.Common;
using Dapper;

namespace NightWatch.Store.Connections;

/// <summary>An open connection, in a transaction when it writes. Every statement's values are parameters.</summary>
internal sealed class Session(DbConnection connection, DbTransaction? transaction, Dialect dialect, CancellationToken cancellationToken)
{
    public Dialect Dialect { get; } = dialect;

    /// <returns>Rows changed.</returns>
    public Task<int> ExecuteAsync(string sql, object? values = null) => connection.ExecuteAsync(Command(sql, values));

    public async Task<IReadOnlyList<T>> QueryAsync<T>(string sql, object? values = null) =>
        (await connection.QueryAsync<T>(Command(sql, values))).AsList();

    public Task<T?> FirstAsync<T>(string sql, object? values = null) => connection.QueryFirstOrDefaultAsync<T>(Command(sql, values));

    private CommandDefinition Command(string sql, object? values) => new(sql, values, transaction, cancellationToken: cancellationToken);
}
