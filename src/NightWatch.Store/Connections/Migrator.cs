using DbUp;
using DbUp.Engine;

namespace NightWatch.Store.Connections;

/// <summary>Runs the numbered scripts of one folder in one transaction. It takes no lock: <see cref="Database"/> does.</summary>
internal sealed class Migrator(DatabaseSetting setting)
{
    private readonly UpgradeEngine engine = Build(setting);

    /// <exception cref="DatabaseUnusableException">The database has scripts that this program does not know.</exception>
    public IReadOnlyList<string> Pending()
    {
        var unknown = engine.GetExecutedButNotDiscoveredScripts();
        if (unknown.Count > 0)
        {
            throw new DatabaseUnusableException(
                $"Database {setting.Description} has a newer schema ({unknown[^1]}) than this program; run the newer program.");
        }

        return [.. engine.GetScriptsToExecute().Select(script => script.Name)];
    }

    public IReadOnlyList<string> Run()
    {
        var result = engine.PerformUpgrade();
        if (!result.Successful)
        {
            throw new DatabaseUnusableException(
                $"Migration {result.ErrorScript?.Name} of database {setting.Description} failed: {result.Error.Message}", result.Error);
        }

        return [.. result.Scripts.Select(script => script.Name)];
    }

    private static UpgradeEngine Build(DatabaseSetting setting)
    {
        var (target, folder) = setting.Kind == DatabaseKind.Sqlite
            ? (DeployChanges.To.SqliteDatabase(setting.ConnectionString), "Sqlite/")
            : (DeployChanges.To.PostgresqlDatabase(setting.ConnectionString), "Postgres/");
        return target.WithScripts(Scripts(folder)).WithVariablesDisabled().WithTransaction().LogToNowhere().Build();
    }

    private static IEnumerable<SqlScript> Scripts(string folder)
    {
        var assembly = typeof(Migrator).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            yield return new SqlScript(name[folder.Length..], reader.ReadToEnd());
        }
    }
}
