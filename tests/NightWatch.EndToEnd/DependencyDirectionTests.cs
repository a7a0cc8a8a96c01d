using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace NightWatch.EndToEnd;

public sealed class DependencyDirectionTests
{
    /// <summary>The one place where the direction is written: a project and what it may reference.</summary>
    public static TheoryData<string, string[]> MayReference => new()
    {
        { "NightWatch.Sky", [] },
        { "NightWatch.Weather", [] },
        { "NightWatch.Planning", ["NightWatch.Sky", "NightWatch.Weather"] },
        { "NightWatch.Words", ["NightWatch.Sky", "NightWatch.Weather", "NightWatch.Planning"] },
        { "NightWatch.Alerts", ["NightWatch.Sky", "NightWatch.Weather", "NightWatch.Planning", "NightWatch.Words"] },
        { "NightWatch.Store", ["NightWatch.Sky", "NightWatch.Weather", "NightWatch.Planning", "NightWatch.Alerts"] },
        { "NightWatch.Service", ["NightWatch.Sky", "NightWatch.Weather", "NightWatch.Planning", "NightWatch.Words", "NightWatch.Alerts", "NightWatch.Store"] },
    };

    [Theory, MemberData(nameof(MayReference))]
    public void A_project_references_only_what_it_may(string project, string[] allowed)
    {
        var actual = References(project);

        Assert.Empty(actual.Except(allowed));
    }

    [Fact]
    public void Every_project_has_its_rule() =>
        Assert.Equal(
            Directory.GetDirectories(Path.Combine(Root(), "src")).Select(Path.GetFileName).Order(),
            MayReference.Select(row => row.Data.Item1).Order());

    private static IEnumerable<string> References(string project) =>
        XDocument.Load(Path.Combine(Root(), "src", project, project + ".csproj"))
            .Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../.."));
}
