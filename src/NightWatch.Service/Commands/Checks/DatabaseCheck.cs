using System.Globalization;
using NightWatch.Pages.Security;
using NightWatch.Planning.Chance;
using NightWatch.Store;
using NightWatch.Store.Chances;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Secrets;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Service.Commands.Checks;

/// <summary>
/// The database opens, is up to date, takes writes and has room; nothing in it waits too long. The check changes nothing in it.
/// </summary>
internal static class DatabaseCheck
{
    private const long LeastBytes = 100L << 20;
    private const long FewBytes = 1L << 30;
    private const int PageSize = 500;
    private static readonly Duration Late = Duration.FromHours(1);

    public static async Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        List<Finding> said = [];
        try
        {
            await using var database = Database.Open(bench.Settings.Database.Connection);
            said.AddRange(Room(database));
            said.AddRange(Openness(database));
            if (database.File is { } file && !File.Exists(file))
            {
                said.Insert(0, CanMake(file) is { } refusal
                    ? Finding.Fault("database", refusal)
                    : Finding.Ok("database", $"{database.Description} is not there yet; the first start makes it."));
                return said;
            }

            if (database.File is { } empty && new FileInfo(empty).Length == 0 && !File.Exists(empty + "-wal"))
            {
                said.Insert(
                    0,
                    Finding.Warning(
                        "database",
                        $"{empty} is empty; the next start makes a new database in it. If there was one before, restore its backup first.")
                );
                return said;
            }

            var pending = await database.PendingAsync(stop);
            if (pending.Count > 0)
            {
                said.Insert(
                    0,
                    Finding.Warning(
                        "database",
                        $"{database.Description} waits for {pending.Count} migrations ({pending[0]} the first); the next start of the " +
                        "service runs them. Back it up before."));
                return said;
            }

            var noWrites = await WhyNoWritesAsync(database, stop);
            said.InsertRange(0, await ContentsAsync(database, noWrites, bench.Shell.Clock.GetCurrentInstant(), stop));
            return said;
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return [Finding.Fault("database", failure.Message), .. said];
        }
    }

    // What can be read is told also where nothing can be written: a disk that is full.
    private static async Task<string?> WhyNoWritesAsync(Database database, CancellationToken stop)
    {
        try
        {
            await database.TryWriteAsync(stop);
            return null;
        }
        catch (DatabaseUnusableException refused)
        {
            return refused.Message;
        }
    }

    private static async Task<List<Finding>> ContentsAsync(Database database, string? refusal, Instant now, CancellationToken stop)
    {
        var watches = await new WatchStore(database).CountAsync(stop);
        var backlog = await new BacklogStore(database).ReadAsync([], now, stop);
        var running = database.IsServiceRunning() switch
        {
            true => ", a service runs on it",
            false => ", no service runs on it",
            null => "",
        };
        List<Finding> said =
        [
            refusal is null
                ? Finding.Ok("database", $"{database.Description} answers and takes writes, {watches} watches on{running}.")
                : Finding.Fault("database", $"{refusal.TrimEnd('.')}; {watches} watches on{running}."),
        ];
        if (backlog.Letters[OutboxState.Dead] is > 0 and var dead)
            said.Add(
                Finding.Warning(
                    "outbox", $"{dead} letters could not be delivered; 'nightwatch outbox list --state dead' says which and why."));
        if (now - backlog.OldestLetterAt > Late)
            said.Add(
                Finding.Warning(
                    "outbox",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the oldest letter has waited {(now - backlog.OldestLetterAt!.Value).TotalHours:0} h; 'nightwatch outbox list' " +
                        $"says for what.")));
        if (now - backlog.OldestDueAt > Late)
            said.Add(
                Finding.Warning(
                    "passes",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{backlog.DueOpen} looks are due, the oldest for {(now - backlog.OldestDueAt!.Value).TotalHours:0} h; is the " +
                        $"service running?")));
        said.AddRange(await UnreadableAsync(database, now, stop));
        return said;
    }

    /// <summary>Reads what letters and forms are made from, and names every row that cannot be read.</summary>
    private static async Task<IEnumerable<Finding>> UnreadableAsync(Database database, Instant now, CancellationToken stop)
    {
        await foreach (var _ in new WatchStore(database).PagesAsync(PageSize, stop)) stop.ThrowIfCancellationRequested();
        await new SiteStore(database).ListAsync(stop);
        await new ToldNightStore(database).AllFromAsync(now.InUtc().Date.PlusDays(-2), stop);
        await new LearntChanceStore(database).AllAsync(ChancePrior.Shipped, stop);
        await KeyRing.ReadAsync(new SecretStore(database), stop);
        return database.Unreadable.Known.Select(row =>
            Finding.Fault(
                "rows",
                $"the stored {row.Name} cannot be read and is left out, all others go on; put it right or remove it: " +
                $"{row.Why.TrimEnd('.')}."));
    }

    /// <summary>The files are full of addresses; new ones are made for their owner only.</summary>
    private static IEnumerable<Finding> Openness(Database database)
    {
        if (database.File is not { } file) yield break;
        var open = Database.FilesOf(file).Where(File.Exists).Where(IsOpenToOthers).ToList();
        if (open.Count > 0)
            yield return Finding.Warning(
                "database",
                $"other users of this machine may get at {string.Join(", ", open)}; 'chmod 600 {string.Join(' ', open)}' closes them.");
    }

    private static bool IsOpenToOthers(string path) =>
        !OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ~(UnixFileMode.UserRead | UnixFileMode.UserWrite)) != 0;

    private static IEnumerable<Finding> Room(Database database)
    {
        if (database.File is not { } file || Path.GetDirectoryName(file) is not { } folder || !Directory.Exists(folder)) yield break;
        var free = new DriveInfo(folder).AvailableFreeSpace;
        var text = FormattableString.Invariant($"{free / (double)FewBytes:0.0} GiB free at {folder}");
        if (free < LeastBytes) yield return Finding.Fault("disk", text + "; a full disk stops every letter.");
        else if (free < FewBytes) yield return Finding.Warning("disk", text + "; make room.");
        else yield return Finding.Ok("disk", text + ".");
    }

    /// <summary>Whether a file may be made there, tried with one of another name that does not stay.</summary>
    private static string? CanMake(string file)
    {
        var folder = Path.GetDirectoryName(file)!;
        // A start makes the folder too; then its nearest parent must let it.
        while (!Directory.Exists(folder) && Path.GetDirectoryName(folder) is { } parent) folder = parent;
        try
        {
            using var trial = new FileStream(
                Path.Combine(folder, $".nightwatch-{Guid.NewGuid():N}"),
                FileMode.CreateNew,
                FileAccess.Write,
                FileShare.None,
                1,
                FileOptions.DeleteOnClose);
            return null;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return $"{file} is not there and cannot be made: {refused.Message}";
        }
    }
}
