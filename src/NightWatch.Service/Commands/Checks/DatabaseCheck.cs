using NightWatch.Service.Settings;
using NightWatch.Store;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;

namespace NightWatch.Service.Commands.Checks;

/// <summary>The database opens, migrates and answers.</summary>
internal static class DatabaseCheck
{
    public static async Task<Finding> RunAsync(AllSettings settings, Shell shell, CancellationToken stop)
    {
        try
        {
            await using var database = Database.Open(settings.Database.Connection);
            await database.MigrateAsync(stop);
            var watches = await new WatchStore(database).ListAsync(cancellationToken: stop);
            var letters = await new OutboxStore(database).CountAsync(stop);
            var dead = letters.GetValueOrDefault(OutboxState.Dead);
            return new Finding(
                "database",
                dead == 0,
                $"{database.Description} answers, {watches.Count(watch => !watch.Paused)} watches on" + (dead == 0 ? "." : $"; {dead} letters could not be delivered."));
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return new Finding("database", false, failure.Message);
        }
    }
}
