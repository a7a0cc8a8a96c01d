using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>
/// What is written in the repository can be read: lines of a length that fits beside another window, links that lead somewhere.
/// </summary>
public sealed partial class WrittenFilesTests
{
    private const int CodeColumns = 140;
    private const int ProseColumns = 160;
    private const int ReadmeLines = 150;

    private static readonly string Root = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Here())!, "../../.."));

    [Fact]
    public void A_line_of_code_is_at_most_140_columns() => Assert.Empty(TooLong("*.cs", CodeColumns, _ => true));

    /// <summary>A row of a table cannot be broken.</summary>
    [Fact]
    public void A_line_of_prose_is_at_most_160_columns() =>
        Assert.Empty(TooLong("*.md", ProseColumns, line => !line.StartsWith('|') && !line.StartsWith("![", StringComparison.Ordinal)));

    [Fact]
    public void The_readme_is_short_and_its_tables_are_narrow()
    {
        var readme = File.ReadAllLines(Path.Combine(Root, "README.md"));

        Assert.InRange(readme.Length, 1, ReadmeLines);
        Assert.DoesNotContain(readme, line => line.Length > ProseColumns);
    }

    [Fact]
    public void A_link_from_one_document_to_another_file_leads_there()
    {
        var lost =
            from file in Files("*.md")
            from Match link in Link().Matches(File.ReadAllText(file))
            let to = link.Groups["to"].Value.Split('#')[0]
            where to.Length > 0 && !to.Contains(':', StringComparison.Ordinal)
            where !Path.Exists(Path.GetFullPath(Path.Combine(Path.GetDirectoryName(file)!, to)))
            select $"{Path.GetRelativePath(Root, file)}: {to}";

        Assert.Empty(lost);
    }

    /// <summary>A document that names a file of the code by its path or name names one that is there.</summary>
    [Fact]
    public void A_file_that_a_document_names_exists()
    {
        var files = Files("*.cs").Select(file => "/" + Path.GetRelativePath(Root, file).Replace('\\', '/')).ToList();
        var lost =
            from document in Files("*.md")
            from Match named in NamedFile().Matches(File.ReadAllText(document))
            let name = named.Groups["name"].Value
            // A project is named by its last word: Planning/Verdicts/Judges.cs.
            where !files.Any(file => file.EndsWith(name, StringComparison.Ordinal) && file[^(name.Length + 1)] is '/' or '.')
            select $"{Path.GetRelativePath(Root, document)}: {name}";

        Assert.Empty(lost);
    }

    [Fact]
    public void Every_project_says_what_it_is_and_where_to_begin() =>
        Assert.All(
            Directory.GetDirectories(Path.Combine(Root, "src")),
            project => Assert.Contains("Begin at `", File.ReadAllText(Path.Combine(project, "README.md")), StringComparison.Ordinal));

    private static IEnumerable<string> TooLong(string pattern, int columns, Func<string, bool> counts) =>
        from file in Files(pattern)
        from line in File.ReadLines(file).Select((text, at) => (Text: text, Number: at + 1))
        where line.Text.Length > columns && counts(line.Text)
        select $"{Path.GetRelativePath(Root, file)}:{line.Number} has {line.Text.Length} columns";

    // What is built lies in folders of its own, and so do the packages of peers.
    private static IEnumerable<string> Files(string pattern) =>
        new[] { "src", "tests", "deploy" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories))
            .Concat(Directory.EnumerateFiles(Root, pattern))
            .Where(file => !Built().IsMatch(Path.GetRelativePath(Root, file)));

    private static string Here([CallerFilePath] string here = "") => here;

    [GeneratedRegex(@"(^|[\\/])(bin|obj|node_modules|TestResults)[\\/]", RegexOptions.CultureInvariant)]
    private static partial Regex Built();

    [GeneratedRegex(@"`(?<name>[A-Za-z./]+\.cs)`", RegexOptions.CultureInvariant)]
    private static partial Regex NamedFile();

    [GeneratedRegex(@"\]\((?<to>[^)\s]+)\)", RegexOptions.CultureInvariant)]
    private static partial Regex Link();
}
