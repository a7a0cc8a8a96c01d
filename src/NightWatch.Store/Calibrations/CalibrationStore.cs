using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Calibrations;

/// <summary>What was learnt of each feed and lead, every version of it.</summary>
public sealed class CalibrationStore(Database database)
{
    private static readonly RowName Name = new("calibration", ["feed", "lead", "version"]);

    /// <summary>Keeps what was learnt. The same version may come again with a newer proof of the same parameters.</summary>
    public Task PutAsync(Calibration calibration, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return database.WriteAsync(
            session => session.ExecuteAsync(
                """
                INSERT INTO calibration (feed, lead, version, learnt_at, body) VALUES (@FeedId, @lead, @version, @LearntAt, @body)
                ON CONFLICT (feed, lead, version) DO UPDATE SET learnt_at = excluded.learnt_at, body = excluded.body
                """,
                new
                {
                    calibration.For.FeedId,
                    lead = (long)calibration.For.LeadNights,
                    version = (long)calibration.Version,
                    calibration.LearntAt,
                    body = StoreJson.Write(calibration),
                }),
            cancellationToken);
    }

    /// <summary>The newest version of each feed and lead.</summary>
    public async Task<CalibrationBook> NewestAsync(CancellationToken cancellationToken = default) => new(await QueryAsync(
        "SELECT feed, lead, version, body FROM calibration c WHERE version = (SELECT max(version) FROM calibration n WHERE n.feed = c.feed AND n.lead = c.lead)", cancellationToken));

    /// <summary>Every version, by feed, lead and version.</summary>
    public Task<IReadOnlyList<Calibration>> AllAsync(CancellationToken cancellationToken = default) =>
        QueryAsync("SELECT feed, lead, version, body FROM calibration ORDER BY feed, lead, version", cancellationToken);

    private async Task<IReadOnlyList<Calibration>> QueryAsync(string sql, CancellationToken cancellationToken)
    {
        var rows = await database.ReadAsync(session => session.ReadAsync<Row, Calibration>(Name, row => StoreJson.Read<Calibration>(row.Body), sql), cancellationToken);
        return rows.Readable;
    }

    private sealed class Row
    {
        public required string Body { get; init; }
    }
}
