using System.Data;
using System.Data.Common;
using System.Globalization;

namespace NightWatch.Store.Connections;

/// <summary>How the rows of a query are named when one of them cannot be read.</summary>
/// <param name="Table">Where they stand.</param>
/// <param name="Key">The result's columns that say which row it is.</param>
/// <param name="Address">The result's column with the subscriber's address; null: it has none.</param>
internal sealed record RowName(string Table, IReadOnlyList<string> Key, string? Address = null)
{
    public string KeyOf(DbDataReader row) => string.Join(' ', Key.Select(column => Text(row, column)));

    public UnreadableRow Unreadable(DbDataReader row, Exception fault) =>
        new(Table, KeyOf(row), Address is null ? null : Text(row, Address), Why(fault));

    // Dapper's own words quote the value, which may be a whole document.
    private static string Why(Exception fault) =>
        (fault is DataException { InnerException: { } inner } ? inner : fault).Message.ReplaceLineEndings(" ");

    private static string Text(DbDataReader row, string column) =>
        Convert.ToString(row.GetValue(row.GetOrdinal(column)), CultureInfo.InvariantCulture) ?? "";
}

/// <summary>What a query found.</summary>
/// <param name="Readable">The rows, read.</param>
/// <param name="Unreadable">Those that could not be; they have been noted.</param>
internal readonly record struct Rows<T>(IReadOnlyList<T> Readable, IReadOnlyList<UnreadableRow> Unreadable)
{
    /// <summary>The only row, or null where there is none.</summary>
    /// <exception cref="RowUnreadableException">There is one and it cannot be read.</exception>
    public T? Only() => Unreadable.Count > 0 ? throw new RowUnreadableException(Unreadable[0]) : Readable.SingleOrDefault();
}
