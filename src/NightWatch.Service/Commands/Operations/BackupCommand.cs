using System.CommandLine;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store.Backups;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;

namespace NightWatch.Service.Commands.Operations;

/// <summary>Backup while the service runs, restore while it does not.</summary>
internal static class BackupCommand
{
    public static Command CreateBackup(Shell shell, Option<string?> config)
    {
        var file = new Argument<string>("file") { Description = "The new file; it must not exist." };
        var command = new Command(
            "backup", "Copies the SQLite database into a file, also while the service runs; the copy is read through before it counts.")
        {
            file,
        };
        command.SetAction(given =>
        {
            var database = SqliteFile(shell, given.GetValue(config), "pg_dump --format=custom --file=FILE DATABASE");
            var target = shell.PathOf(given.GetRequiredValue(file));
            new SqliteBackup(database).Write(target);
            shell.Say(
                FormattableString.Invariant(
                    $"{database} is backed up to {target}, {new FileInfo(target).Length / 1024.0 / 1024.0:0.0} MiB, read through and sound."
                ));
            return Exit.Ok;
        });
        return command;
    }

    public static Command CreateRestore(Shell shell, Option<string?> config)
    {
        var file = new Argument<string>("file") { Description = "A backup." };
        var drop = new Option<bool>("--drop-open")
        {
            Description =
                "Also takes every unsent letter of the backup out of its queue: those that went out after the backup would go out again.",
        };
        var command = new Command(
            "restore", "Puts a backup in the place of the SQLite database; the service must be stopped. The old database is kept.")
        {
            file,
            drop,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var path = SqliteFile(shell, given.GetValue(config), "pg_restore --clean --if-exists --dbname=DATABASE FILE");
                var now = shell.Clock.GetCurrentInstant();
                var restored = new SqliteBackup(path).Restore(shell.PathOf(given.GetRequiredValue(file)), now);
                shell.Say($"{path} is restored." + (restored.Kept is { } kept ? $" The database before it is {kept}." : ""));
                if (restored.Migrations > 0) shell.Say($"It is {restored.Migrations} migrations behind this program; they are run now.");
                await using var database = Database.Open(path);
                await database.MigrateAsync(stop);
                var outbox = new OutboxStore(database);
                // What is past its use is never sent; this only says it before the service does.
                var late = (await outbox.ExpireAsync(now, stop)).Count;
                if (late > 0) shell.Say($"{late} letters in it are past their use and are not sent.");
                var open = given.GetValue(drop) ? 0 : await OpenAsync(outbox, stop);
                if (given.GetValue(drop))
                    shell.Say(
                        $"{await outbox.DropAsync(null, "dropped at a restore", now, stop)} unsent letters are taken out of the queue.");
                if (open > 0)
                    shell.Say(
                        $"{open} letters are unsent and still of use. One that went out after the backup goes out again, with the same " +
                        "Message-ID; 'nightwatch outbox list' shows them, 'outbox drop ID' or '--drop-open' keeps them back.");
                return Exit.Ok;
            });
        return command;
    }

    private static async Task<long> OpenAsync(OutboxStore outbox, CancellationToken stop)
    {
        var counts = await outbox.CountAsync(stop);
        return counts.GetValueOrDefault(OutboxState.Pending)
            + counts.GetValueOrDefault(OutboxState.Retry)
            + counts.GetValueOrDefault(OutboxState.Sending);
    }

    /// <exception cref="BadInputException">The database is PostgreSQL's.</exception>
    private static string SqliteFile(Shell shell, string? configPath, string instead)
    {
        var settings = AllSettings.Read(shell.Directory, configPath).Database;
        if (settings.Faults().FirstOrDefault() is { } fault) throw new BadInputException("configuration: " + fault);
        try
        {
            var database = Database.Open(settings.Connection);
            return database.File ?? throw new BadInputException($"Database:Connection is PostgreSQL's; use its own tool: {instead}.");
        }
        catch (FormatException refused)
        {
            throw new BadInputException($"Database:Connection: {refused.Message}");
        }
    }
}
