using NightWatch.Planning.Chance;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Chances;

/// <summary>
/// What was learnt of each feed and lead, every version that was in use. What began as another prior is left out: it does not count any
/// more.
/// </summary>
public sealed class LearntChanceStore(Database database)
{
    // Rows without a learning are the probability maps of an earlier release; they only keep their version numbers taken.
    private const string Select = "SELECT feed, lead, version, learnt_at, body, learning FROM calibration c WHERE learning IS NOT NULL";

    private static readonly RowName Name = new("calibration", ["feed", "lead", "version"]);

    /// <summary>Keeps what was learnt. The same version may come again while it is not in use.</summary>
    public Task PutAsync(LearntChance learnt, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(learnt);
        return database.WriteAsync(
            session =>
                session.ExecuteAsync(
                    """
                    INSERT INTO calibration (feed, lead, version, learnt_at, body, learning)
                      VALUES (@FeedId, @lead, @version, @LearntAt, @body, @learning)
                    ON CONFLICT (feed, lead, version) DO UPDATE SET learnt_at = excluded.learnt_at, body = excluded.body,
                      learning = excluded.learning
                    """,
                    new
                    {
                        learnt.For.FeedId,
                        lead = (long)learnt.For.Lead,
                        version = (long)learnt.Version,
                        learnt.LearntAt,
                        body = StoreJson.Write(new Proven(learnt.Proof, learnt.Sources)),
                        learning = LearningText.Write(learnt.Learning),
                    }),
            cancellationToken);
    }

    /// <summary>The newest version of each feed and lead, by feed and lead.</summary>
    public Task<IReadOnlyList<LearntChance>> NewestAsync(ChancePrior prior, CancellationToken cancellationToken = default) =>
        QueryAsync(
            $"{Select} AND version = (SELECT max(version) FROM calibration n WHERE n.feed = c.feed AND n.lead = c.lead) ORDER BY feed, " +
            "lead",
            prior,
            cancellationToken);

    /// <summary>Every version, by feed, lead and version.</summary>
    public Task<IReadOnlyList<LearntChance>> AllAsync(ChancePrior prior, CancellationToken cancellationToken = default) =>
        QueryAsync($"{Select} ORDER BY feed, lead, version", prior, cancellationToken);

    /// <summary>The greatest version number taken of each feed and lead, also by what does not count any more.</summary>
    public async Task<IReadOnlyDictionary<ChanceKey, int>> VersionsAsync(CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session => session.QueryAsync<TakenRow>("SELECT feed, lead, max(version) AS version FROM calibration GROUP BY feed, lead"),
            cancellationToken);
        return rows.ToDictionary(row => new ChanceKey(row.Feed, (int)row.Lead), row => (int)row.Version);
    }

    private async Task<IReadOnlyList<LearntChance>> QueryAsync(string sql, ChancePrior prior, CancellationToken cancellationToken)
    {
        var rows = await database.ReadAsync(
            session => session.ReadAsync<Row, LearntChance?>(Name, row => row.ToLearnt(prior), sql), cancellationToken);
        return [.. rows.Readable.OfType<LearntChance>()];
    }

    private sealed record Proven(LearningProof Proof, IReadOnlyDictionary<string, int> Sources);

    private sealed class TakenRow
    {
        public required string Feed { get; init; }

        public required long Lead { get; init; }

        public required long Version { get; init; }
    }

    private sealed class Row
    {
        public required string Feed { get; init; }

        public required long Lead { get; init; }

        public required long Version { get; init; }

        public required Instant LearntAt { get; init; }

        public required string Body { get; init; }

        public required string Learning { get; init; }

        public LearntChance? ToLearnt(ChancePrior prior)
        {
            if (LearningText.Read(Learning, prior) is not { } learning) return null;
            if (learning.Lead != Lead)
                throw new FormatException($"The learning is of lead {learning.Lead}; accepted: that of its row, {Lead}.");
            var proven = StoreJson.Read<Proven>(Body);
            return new LearntChance
            {
                For = new ChanceKey(Feed, (int)Lead),
                Version = (int)Version,
                LearntAt = LearntAt,
                Learning = learning,
                Proof = proven.Proof,
                Sources = proven.Sources,
            };
        }
    }
}
