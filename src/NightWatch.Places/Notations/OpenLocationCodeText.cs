namespace NightWatch.Places.Notations;

/// <summary>An Open Location Code as people write it: alone, or short and followed by the name of a place.</summary>
internal static class OpenLocationCodeText
{
    /// <summary>Null: the text is something else.</summary>
    public static PlaceReading? Read(string text)
    {
        var end = text.IndexOfAny([' ', ',', ';', '\t', '\n', '\r']);
        var (code, rest) = end < 0 ? (text, "") : (text[..end], text[end..].Trim(' ', ',', ';', '\t', '\n', '\r'));
        if (!code.Contains('+', StringComparison.Ordinal)) return null;
        // "+33.35" is a number with a sign, "+2VX" the end of a code; a code has no '.', and a place's name follows where it is short.
        if (OpenLocationCode.IsFull(code))
        {
            var area = OpenLocationCode.Decode(code);
            return PlaceText.Checked(area.LatitudeDeg, area.LongitudeDeg, null, "Open Location Code");
        }

        return OpenLocationCode.IsShort(code) && (code[0] != '+' || code.Any(char.IsLetter))
            ? new PlaceReading.ShortCode(code.ToUpperInvariant(), rest)
            : null;
    }
}
