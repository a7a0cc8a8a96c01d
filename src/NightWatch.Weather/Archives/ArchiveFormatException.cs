namespace NightWatch.Weather.Archives;

/// <summary>A line of an archive that is not what the format says; the message is one sentence that begins with the line.</summary>
public sealed class ArchiveFormatException : Exception
{
    /// <inheritdoc/>
    public ArchiveFormatException()
    {
    }

    /// <inheritdoc/>
    public ArchiveFormatException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public ArchiveFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <param name="line">From 1.</param>
    /// <param name="field">Name of the member; empty for the line as a whole.</param>
    /// <param name="what">What is wrong and what is accepted.</param>
    internal ArchiveFormatException(int line, string field, string what)
        : this(FormattableString.Invariant($"line {line}{(field.Length == 0 ? "" : ", " + field)}: {what}."))
    {
    }
}
