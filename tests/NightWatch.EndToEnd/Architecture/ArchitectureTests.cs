using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using NightWatch.Planning.Reasons;
using NightWatch.Planted.North;
using NightWatch.Planted.South;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>
/// Arrows between projects point one way, and the folders of a project form no circle. A folder is a namespace; a folder and one inside it
/// are two, so that what is in the parent may use the child or be used by it, not both. No type is excepted, not even those that put all
/// together.
/// </summary>
public sealed partial class ArchitectureTests
{
    /// <summary>The one place where the direction is written: a project may use those before it.</summary>
    private static readonly string[] Order =
    [
        "NightWatch.Sky",
        "NightWatch.Places",
        "NightWatch.Weather",
        "NightWatch.Planning",
        "NightWatch.Words",
        "NightWatch.Pictures",
        "NightWatch.Letters",
        "NightWatch.Store",
        "NightWatch.Watchkeeping",
        "NightWatch.Delivery",
        "NightWatch.Pages",
        "NightWatch.Service",
    ];

    private static readonly Lazy<IReadOnlyList<TypeUse>> Uses = new(() =>
        [
            .. Order.SelectMany(project =>
                CompiledTypes.UsesIn(
                    Path.Combine(AppContext.BaseDirectory, (project == "NightWatch.Service" ? "nightwatch" : project) + ".dll"))),
        ]);

    [Fact]
    public void Every_project_has_its_place_in_the_order() =>
        Assert.Equal(Directory.GetDirectories(Path.Combine(Root(), "src")).Select(Path.GetFileName).Order(), Order.Order());

    [Fact]
    public void A_project_references_only_what_stands_before_it()
    {
        foreach (var (project, place) in Order.Select((project, place) => (project, place)))
            Assert.Empty(References(project).Except(Order.Take(place)));
    }

    [Fact]
    public void A_project_uses_only_what_stands_before_it() => Nothing(FolderGraph.AgainstOrder(Uses.Value, Order));

    [Fact]
    public void The_folders_of_a_project_form_no_circle() => Nothing(FolderGraph.Circles(Uses.Value));

    /// <summary>Whoever finds a reason stands beside it, in the folder of the idea: dew is computed, planned and judged in one.</summary>
    [Fact]
    public void A_reason_is_named_in_planning_only_by_the_folder_of_its_idea()
    {
        var cases = typeof(Reason).Assembly.GetExportedTypes().Where(type => type.IsSubclassOf(typeof(Reason)))
            .Select(type => type.FullName).ToHashSet();
        var found = Uses.Value.Where(use => use.From.Project == "NightWatch.Planning" && use.From != use.To)
            .Where(use => cases.Contains(use.To.ToString())).ToList();

        Assert.Equal(cases.Except([typeof(Recorded).FullName]).Order(), found.Select(use => use.To.ToString()).Distinct().Order());
        Nothing([.. found.Where(use => use.From.Folder != use.To.Folder).Select(use => $"{use.From} finds {use.To}")]);
    }

    [Fact]
    public void A_namespace_is_its_folder()
    {
        var source = Path.Combine(Root(), "src");
        foreach (
            var file in Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories).Where(file => !BuildOutput().IsMatch(file)))
        {
            var folder = Path.GetRelativePath(source, Path.GetDirectoryName(file)!).Replace(Path.DirectorySeparatorChar, '.');
            var written = Namespace().Match(File.ReadAllText(file));
            if (written.Success) Assert.True(written.Groups[1].Value == folder, $"{file} is in the namespace {written.Groups[1].Value}");
        }
    }

    [Fact]
    public void A_planted_circle_is_found_and_its_types_are_named()
    {
        var circle = Assert.Single(FolderGraph.Circles(Planted()));

        Assert.Contains("NightWatch.Planted.North and NightWatch.Planted.South", circle, StringComparison.Ordinal);
        Assert.Contains("NightWatch.Planted.North.Compass uses NightWatch.Planted.South.Needle", circle, StringComparison.Ordinal);
        Assert.Contains("NightWatch.Planted.South.ByBody uses NightWatch.Planted.North.Compass", circle, StringComparison.Ordinal);
    }

    [Fact]
    public void A_planted_arrow_against_the_order_is_found_and_its_types_are_named()
    {
        var found = Assert.Single(
            FolderGraph.AgainstOrder(
                [
                    new TypeUse(TypeNode.Of("NightWatch.Sky.Moon", "Phase")!, TypeNode.Of("NightWatch.Store.Due", "DueStore")!),
                    new TypeUse(TypeNode.Of("NightWatch.Store", "Open")!, TypeNode.Of("NightWatch.Sky", "Sun")!),
                ],
                Order));

        Assert.Equal("NightWatch.Sky may not use NightWatch.Store: NightWatch.Sky.Moon.Phase uses NightWatch.Store.Due.DueStore", found);
    }

    [Theory]
    [InlineData(typeof(ByBase))]
    [InlineData(typeof(ByInterface))]
    [InlineData(typeof(ByField))]
    [InlineData(typeof(BySignature))]
    [InlineData(typeof(ByGenericArgument))]
    [InlineData(typeof(ByConstraint<>))]
    [InlineData(typeof(ByMark))]
    [InlineData(typeof(ByAttributeValue))]
    [InlineData(typeof(ByBody))]
    [InlineData(typeof(ByLambda))]
    [InlineData(typeof(ByIterator))]
    [InlineData(typeof(ByNested))]
    [InlineData(typeof(BySwitch))]
    public void Every_way_to_use_a_type_is_seen(Type user) =>
        Assert.Contains(Planted(), use => use.From.Name == user.Name && use.To.Folder == typeof(Compass).Namespace);

    // The whole text, which an assertion about a collection would cut.
    private static void Nothing(IReadOnlyList<string> faults) => Assert.True(faults.Count == 0, string.Join('\n', faults));

    private static TypeUse[] Planted() =>
        [.. CompiledTypes.UsesIn(typeof(ArchitectureTests).Assembly.Location).Where(use => use.From.Project == "NightWatch.Planted")];

    private static IEnumerable<string> References(string project) =>
        XDocument.Load(Path.Combine(Root(), "src", project, project + ".csproj"))
            .Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));

    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../.."));

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"[\\/](obj|bin)[\\/]")]
    private static partial Regex BuildOutput();
}
