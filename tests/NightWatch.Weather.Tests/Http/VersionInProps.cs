using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace NightWatch.Weather.Tests;

/// <summary>The one place where the version stands.</summary>
internal static class VersionInProps
{
    public static string Read([CallerFilePath] string here = "")
    {
        var props = Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "Directory.Build.props");
        return XDocument.Load(props).Descendants("Version").Single().Value;
    }
}
