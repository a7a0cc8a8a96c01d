using DbUp;
using DbUp.Engine;

namespace NightWatch.Store.Connections;

/// <summary>Runs the numbered scripts of one folder in one transaction. It takes no lock: <see cref="Database"/> does.</summary>
/// <param name="setting">Which database.</param>
/// <param name="later">Scripts after those of this program, as a later version of it has them.</param>
internal sealed class Migrator(DatabaseSetting setting, params IReadOnlyList<(string Name, string Sql)> later)
{
    private readonly UpgradeEngine engine = Build(setting, later);

    /// <exception cref="DatabaseUnusableException">The database has scripts that this program does not know.</exception>
    public IReadOnlyList<string> Pending()
    {
        RefuseNewer(engine.GetExecutedButNotDiscoveredScripts(), setting.Description);
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

    /// <summary>All scripts that this program knows, in order.</summary>
    public static IReadOnlyList<string> Names(DatabaseKind kind) =>
        [.. Resources(Folder(kind)).Select(name => name[Folder(kind).Length..])];

    /// <exception cref="DatabaseUnusableException">There is one.</exception>
    public static void RefuseNewer(IEnumerable<string> unknown, string description)
    {
        if (unknown.LastOrDefault() is { } newer)
            throw new DatabaseUnusableException(
                $"Database {description} has a newer schema ({newer}) than this program; run the newer program.");
    }

    private static string Folder(DatabaseKind kind) => kind == DatabaseKind.Sqlite ? "Sqlite/" : "Postgres/";

    private static UpgradeEngine Build(DatabaseSetting setting, IReadOnlyList<(string Name, string Sql)> later)
    {
        var target =
            setting.Kind == DatabaseKind.Sqlite
                ? DeployChanges.To.SqliteDatabase(setting.ConnectionString)
                : Postgres.Migrations(setting.ConnectionString);
        return target
            .WithScripts(Scripts(Folder(setting.Kind)).Concat(later.Select(script => new SqlScript(script.Name, script.Sql))))
            .WithVariablesDisabled()
            .WithTransaction()
            .LogToNowhere()
            .Build();
    }

    private static IEnumerable<string> Resources(string folder) =>
        typeof(Migrator)
            .Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    private static IEnumerable<SqlScript> Scripts(string folder)
    {
        foreach (var name in Resources(folder))
        {
            using var reader = new StreamReader(typeof(Migrator).Assembly.GetManifestResourceStream(name)!);
            yield return new SqlScript(name[folder.Length..], reader.ReadToEnd());
        }
    }
}
