using System.Collections.Concurrent;

namespace NightWatch.Store.Connections;

/// <summary>A row that is there but cannot be read: a wrong byte in its document, or a zone that the zone data lack.</summary>
/// <param name="Table">Where it stands.</param>
/// <param name="Key">Which it is there: the id of a watch, of a site, or a watch and a night.</param>
/// <param name="Address">The subscriber's address as the row has it, lower case; null where the row has none.</param>
/// <param name="Why">What the reader met, on one line.</param>
public sealed record UnreadableRow(string Table, string Key, string? Address, string Why)
{
    /// <summary>"watch pier-9 of ilse@example.org".</summary>
    public string Name => Address is null ? $"{Table} {Key}" : $"{Table} {Key} of {Address}";
}

/// <summary>One stored row was asked for and it cannot be read. What is asked for in numbers leaves such rows out instead.</summary>
public sealed class RowUnreadableException : Exception
{
    /// <inheritdoc/>
    public RowUnreadableException()
    {
    }

    /// <inheritdoc/>
    public RowUnreadableException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public RowUnreadableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Names the row and says what is wrong with it.</summary>
    public RowUnreadableException(UnreadableRow row)
        : base($"The stored {row?.Name} cannot be read: {row?.Why}")
    {
    }
}

/// <summary>
/// The rows that readers have stepped round, so that one row stops nobody else's letters and is known all the same. A row that is read well
/// again is forgotten.
/// </summary>
public sealed class UnreadableRows
{
    private readonly ConcurrentDictionary<(string Table, string Key), UnreadableRow> known = new();

    /// <summary>Told of each row once, by whoever reads it first.</summary>
    public event Action<UnreadableRow>? Found;

    /// <summary>Those known now, by table and key.</summary>
    public IReadOnlyList<UnreadableRow> Known =>
        [.. known.Values.OrderBy(row => row.Table, StringComparer.Ordinal).ThenBy(row => row.Key, StringComparer.Ordinal)];

    internal bool IsEmpty => known.IsEmpty;

    /// <summary>What is wrong with a row; null: it was not met, or was read well.</summary>
    public UnreadableRow? Find(string table, string key) => known.GetValueOrDefault((table, key));

    /// <summary>Notes a row that can be read but not worked with.</summary>
    public void Note(UnreadableRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (known.TryAdd((row.Table, row.Key), row)) Found?.Invoke(row);
        else known[(row.Table, row.Key)] = row;
    }

    /// <summary>The row was read well, or is gone.</summary>
    internal void Forget(string table, string key) => known.TryRemove((table, key), out _);
}
