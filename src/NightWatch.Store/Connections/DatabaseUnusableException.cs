namespace NightWatch.Store.Connections;

/// <summary>The database cannot be used as it is; the message is one line for the operator.</summary>
public sealed class DatabaseUnusableException : Exception
{
    /// <inheritdoc/>
    public DatabaseUnusableException()
    {
    }

    /// <inheritdoc/>
    public DatabaseUnusableException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public DatabaseUnusableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
