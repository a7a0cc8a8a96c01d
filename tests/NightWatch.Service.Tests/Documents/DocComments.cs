using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace NightWatch.Service.Tests.Documents;

/// <summary>What the code says of its own members, read from the documentation that the compiler writes beside each assembly.</summary>
internal sealed partial class DocComments
{
    private readonly Dictionary<string, XElement> members = [];
    private readonly HashSet<string> read = [];

    /// <summary>The summary of a member as Markdown; of a positional member of a record, its parameter's; empty: none.</summary>
    public string Of(MemberInfo member)
    {
        var type = member.DeclaringType!;
        Read(type.Assembly);
        var owner = (type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName!.Replace('+', '.');
        var own = members.GetValueOrDefault($"{(member is FieldInfo ? 'F' : 'P')}:{owner}.{member.Name}")?.Element("summary");
        var asParameter = members
            .GetValueOrDefault($"T:{owner}")
            ?.Elements("param")
            .FirstOrDefault(one => (string?)one.Attribute("name") == member.Name);
        return Markdown(own ?? asParameter);
    }

    private void Read(Assembly assembly)
    {
        if (!read.Add(assembly.Location)) return;
        foreach (var member in XDocument.Load(Path.ChangeExtension(assembly.Location, ".xml")).Descendants("member"))
            members[(string)member.Attribute("name")!] = member;
    }

    private static string Markdown(XElement? text)
    {
        if (text is null) return "";
        var words = string.Concat(text.Nodes().Select(node => node switch
        {
            XText plain => plain.Value,
            XElement { Name.LocalName: "c" } code => $"`{code.Value}`",
            XElement element => element.Attribute("cref") is { } to ? Last(to.Value) : element.Attribute("name")?.Value ?? element.Value,
            _ => "",
        }));
        return Spaces().Replace(words, " ").Trim();
    }

    // A member as the document names it; a type by its name.
    private static string Last(string to)
    {
        var name = to[(to.LastIndexOf('.') + 1)..];
        return to.StartsWith("T:", StringComparison.Ordinal) ? name : $"`{char.ToLowerInvariant(name[0])}{name[1..]}`";
    }

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();
}
