using System.Text.RegularExpressions;

namespace NightWatch.Pages.Watches;

/// <summary>What the fields are called in a list of faults: by hand where the name in the watch would not be understood.</summary>
internal static partial class FieldNames
{
    private static readonly Dictionary<string, string> Own = new()
    {
        ["place"] = "Coordinates",
        ["home"] = "Where the drive starts",
        ["address"] = "Mail address",
        ["site.name"] = "Name of the place",
        ["site.position.elevationM"] = "Elevation",
        ["site.zone"] = "Time zone",
        ["site.measuredSkyBrightness"] = "Measured sky brightness",
        ["kit.fNumber"] = "Aperture",
        ["megapixels"] = "Resolution",
    };

    public static string Of(string name)
    {
        if (Own.TryGetValue(name, out var own)) return own;
        var words = Hump()
            .Replace(name[(name.IndexOf('.', StringComparison.Ordinal) + 1)..].Replace('.', ' '), m => " " + m.Value.ToLowerInvariant());
        return words.Length == 0 ? name : char.ToUpperInvariant(words[0]) + words[1..];
    }

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Hump();
}
