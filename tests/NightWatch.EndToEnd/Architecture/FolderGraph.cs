namespace NightWatch.EndToEnd.Architecture;

/// <summary>What is wrong with a graph of uses, each with the types that make it so.</summary>
public static class FolderGraph
{
    private const int MostNamed = 5;

    /// <summary>One text for each set of folders of one project that all use each other, directly or through one another.</summary>
    public static IReadOnlyList<string> Circles(IEnumerable<TypeUse> uses)
    {
        var edges = uses.Where(use => use.From.Project == use.To.Project && use.From.Folder != use.To.Folder)
            .ToLookup(use => use.From.Folder);
        var reached = edges.ToDictionary(folder => folder.Key, folder => From(folder.Key, edges));
        return
        [
            .. reached
                .Where(folder => folder.Value.Contains(folder.Key))
                .Select(folder =>
                    string.Join(
                        " and ",
                        folder
                            .Value.Where(other => reached.GetValueOrDefault(other)?.Contains(folder.Key) == true)
                            .Order(StringComparer.Ordinal)))
                .Distinct()
                .Select(circle => $"{circle} form a circle:\n{string.Join('\n', Within(circle.Split(" and "), edges))}"),
        ];
    }

    /// <summary>One text for each pair of projects of which the first uses one that stands after it.</summary>
    /// <param name="uses">The uses.</param>
    /// <param name="order">The projects; each may use those before it.</param>
    public static IReadOnlyList<string> AgainstOrder(IEnumerable<TypeUse> uses, string[] order) =>
    [
        .. uses.Where(use => Array.IndexOf(order, use.To.Project) > Array.IndexOf(order, use.From.Project))
            .GroupBy(use => (From: use.From.Project, To: use.To.Project))
            .Select(pair => $"{pair.Key.From} may not use {pair.Key.To}: {Named(pair)}"),
    ];

    private static HashSet<string> From(string folder, ILookup<string, TypeUse> edges)
    {
        var reached = new HashSet<string>();
        var next = new Stack<string>([folder]);
        while (next.TryPop(out var at))
        {
            foreach (var use in edges[at])
            {
                if (reached.Add(use.To.Folder)) next.Push(use.To.Folder);
            }
        }

        return reached;
    }

    private static IEnumerable<string> Within(string[] circle, ILookup<string, TypeUse> edges) => circle
        .SelectMany(folder => edges[folder]).Where(use => circle.Contains(use.To.Folder))
        .GroupBy(use => (From: use.From.Folder, To: use.To.Folder))
        .Select(pair => $"  {pair.Key.From} to {pair.Key.To}: {Named(pair)}");

    private static string Named(IEnumerable<TypeUse> uses)
    {
        string[] all = [.. uses.Select(use => $"{use.From} uses {use.To}").Order(StringComparer.Ordinal)];
        return string.Join("; ", all.Take(MostNamed)) + (all.Length > MostNamed ? $"; and {all.Length - MostNamed} more" : "");
    }
}
