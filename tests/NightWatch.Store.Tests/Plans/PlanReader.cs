using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Plans;

/// <summary>Asks a database how it would run a statement.</summary>
internal abstract class PlanReader
{
    /// <summary>
    /// Tables of a few rows whatever the number of subscribers: the shared keys, one hold a feed or place that waits, one calibration a
    /// feed and lead and month, the scripts that ran.
    /// </summary>
    public static readonly string[] Small = ["secret", "feed_hold", "calibration", "SchemaVersions", "schemaversions"];

    /// <summary>
    /// The steps that read a whole table that grows, or an index on all its rows from end to end; empty: what is read is looked up.
    /// </summary>
    public abstract Task<IReadOnlyList<string>> WholeReadsAsync(Session session, string sql, object? values);
}
