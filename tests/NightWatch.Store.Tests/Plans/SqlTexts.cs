using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Plans;

/// <summary>The pieces of SQL that stand in the compiled store: whole statements, and what lies between the holes of others.</summary>
internal static partial class SqlTexts
{
    public static IReadOnlyList<string> All()
    {
        using var assembly = new PEReader(File.OpenRead(typeof(Database).Assembly.Location));
        var metadata = assembly.GetMetadataReader();
        var texts = new List<string>();
        for (var text = MetadataTokens.UserStringHandle(1); !text.IsNil; text = metadata.GetNextHandle(text))
            texts.Add(metadata.GetUserString(text));
        return [.. texts.Where(text => Sql().IsMatch(text)).Distinct()];
    }

    [GeneratedRegex(@"@[A-Za-z]|\b(SELECT|INSERT INTO|UPDATE|DELETE FROM|FROM|WHERE|ORDER BY|EXISTS)\b")]
    private static partial Regex Sql();
}
