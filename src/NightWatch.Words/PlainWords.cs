using System.Globalization;
using System.Text;

namespace NightWatch.Words;

/// <summary>User text made fit for headers, subjects and calendars.</summary>
public static class PlainWords
{
    /// <summary>
    /// One line: every control, line or paragraph separator, bidirectional override and noncharacter becomes a space, runs of space one
    /// space, a lone surrogate the replacement character.
    /// </summary>
    public static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsUnfit(rune) || Rune.IsWhiteSpace(rune))
            {
                if (line.Length > 0 && line[^1] != ' ') line.Append(' ');
            }
            else
            {
                line.Append(rune.ToString());
            }
        }

        return line.ToString().TrimEnd();
    }

    /// <summary>At most so many user-perceived characters, the last an ellipsis where it was cut.</summary>
    public static string Shortened(string text, int most)
    {
        var info = new StringInfo(text);
        return info.LengthInTextElements <= most ? text : info.SubstringByTextElements(0, Math.Max(1, most - 1)).TrimEnd() + "…";
    }

    /// <summary>User-perceived characters.</summary>
    public static int Length(string text) => new StringInfo(text).LengthInTextElements;

    // C0, C1, line and paragraph separators; explicit bidi embeddings, overrides and isolates (Unicode UAX #9); noncharacters (Unicode 16,
    // 23.7), which XML refuses.
    private static bool IsUnfit(Rune rune) =>
        Rune.IsControl(rune) || rune.Value is 0x2028 or 0x2029 or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069)
        || rune.Value is >= 0xFDD0 and <= 0xFDEF || (rune.Value & 0xFFFE) == 0xFFFE;
}
