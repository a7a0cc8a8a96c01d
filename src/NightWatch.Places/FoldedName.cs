using System.Text;

namespace NightWatch.Places;

/// <summary>
/// A place's name as it is compared: lower-case letters without marks and digits, one space between words. "São Tomé" is "sao tome".
/// </summary>
internal static class FoldedName
{
    // Base letters of U+00C0 to U+017F. The program runs without the system's Unicode tables (InvariantGlobalization), so they stand here.
    private const string Latin =
        "aaaaaaaceeeeiiiidnooooo*ouuuuyts"
        + "aaaaaaaceeeeiiiidnooooo*ouuuuyty"
        + "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiijjkkklllllllllln"
        + "nnnnnnnnoooooooorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

    public static string Of(string name)
    {
        var folded = new StringBuilder(name.Length);
        foreach (var c in name)
        {
            if (Base(c) is { Length: > 0 } letters) folded.Append(letters);
            else if (c is not ('\'' or '’' or '.') && folded.Length > 0 && folded[^1] != ' ') folded.Append(' ');
        }

        return folded.ToString().TrimEnd();
    }

    private static string Base(char c) => c switch
    {
        >= 'a' and <= 'z' or >= '0' and <= '9' => c.ToString(),
        >= 'A' and <= 'Z' => ((char)(c + 32)).ToString(),
        'Æ' or 'æ' => "ae",
        'Œ' or 'œ' => "oe",
        'ß' => "ss",
        'Þ' or 'þ' => "th",
        'Đ' or 'đ' => "d",
        >= '\u00C0' and <= '\u017F' => Latin[c - 0xC0] is var letter && letter == '*' ? "" : letter.ToString(),
        'Ơ' or 'ơ' or >= '\u1ECC' and <= '\u1EE3' => "o",
        'Ư' or 'ư' or >= '\u1EE4' and <= '\u1EF1' => "u",
        'Ș' or 'ș' => "s",
        'Ț' or 'ț' => "t",
        >= '\u1EA0' and <= '\u1EB7' => "a",
        >= '\u1EB8' and <= '\u1EC7' => "e",
        >= '\u1EC8' and <= '\u1ECB' => "i",
        >= '\u1EF2' and <= '\u1EF9' => "y",
        _ => char.IsLetter(c) ? char.ToLowerInvariant(c).ToString() : "",
    };
}
