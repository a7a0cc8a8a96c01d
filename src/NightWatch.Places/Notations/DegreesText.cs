using System.Text.RegularExpressions;

namespace NightWatch.Places.Notations;

/// <summary>
/// Latitude and longitude in degrees: decimal or with minutes and seconds; signs or the letters N, S, E, W before or after; the usual signs
/// for degree, minute and second, colons or spaces; decimal points or commas; latitude first unless letters or labels say otherwise.
/// </summary>
internal static partial class DegreesText
{
    private const string Accepted = "accepted: a latitude and a longitude such as 48.2085, 16.3721 or 48°12'31\"N 16°22'20\"E.";

    /// <summary>Null: the text is something else (a name).</summary>
    public static PlaceReading? Read(string text)
    {
        var plain = Plain(text);
        if (!plain.Any(char.IsDigit)) return null;
        IReadOnlyList<DegreeToken> tokens =
        [
            .. Token().Matches(plain).Select(DegreeToken.Of).Where(token => token.Kind != TokenKind.Space),
        ];
        // A word that is no label makes it a name ("Kilometre 12 lay-by").
        if (tokens.Any(token => token.Kind == TokenKind.Other && char.IsLetter(token.Text[0]))) return null;
        if (plain.Any(c => char.IsDigit(c) && !char.IsAsciiDigit(c)))
            return new PlaceReading.Wrong($"A place's numbers are written with the digits 0 to 9; {Accepted}");
        if (tokens.Any(token => token.Kind == TokenKind.Other)) return Wrong();
        return AngleSplit.InTwo(tokens) is { } halves ? Pair(Angle.Of(halves.First), Angle.Of(halves.Second)) : Wrong();
    }

    private static PlaceReading Pair(Angle one, Angle other)
    {
        if ((one.Fault ?? other.Fault) is { } fault) return new PlaceReading.Wrong($"{fault}; {Accepted}");
        if (one.Axis is not null && one.Axis == other.Axis)
            return new PlaceReading.Wrong($"Both numbers are a {(one.Axis == Axis.Latitude ? "latitude" : "longitude")}; {Accepted}");
        var isTurned = one.Axis == Axis.Longitude || other.Axis == Axis.Latitude;
        var notation = one.Parts > 1 || other.Parts > 1 ? "degrees and minutes" : "decimal degrees";
        return isTurned ? PlaceText.Checked(other.Deg, one.Deg, null, notation) : PlaceText.Checked(one.Deg, other.Deg, null, notation);
    }

    private static PlaceReading.Wrong Wrong() => new($"These numbers are no place; {Accepted}");

    // The many characters that stand for a minus, a degree, a minute and a second become one each; decimal commas become points.
    private static string Plain(string text)
    {
        var plain = new string([
            .. text.Select(c =>
                c switch
                {
                    '\u2212' or '\u2013' or '\u2012' or '\u2010' or '\u2011' => '-',
                    '\u00BA' or '\u02DA' or '\u2070' => '°',
                    '\u2032' or '\u2019' or '\u2018' or '\u00B4' or '`' or '\u02B9' => '\'',
                    '\u2033' or '\u201D' or '\u201C' or '\u02BA' => '"',
                    '\u00A0' or '\u202F' or '\u2009' or '\t' or '\r' or '\n' => ' ',
                    _ => c,
                }),
        ]).Replace("''", "\"", StringComparison.Ordinal);
        return !plain.Contains('.', StringComparison.Ordinal) && DecimalComma().Count(plain) == 2 && !OnlyCommas().IsMatch(plain)
            ? DecimalComma().Replace(plain, ".")
            : plain;
    }

    [GeneratedRegex(@"(?<=[0-9]),(?=[0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalComma();

    // "48,12,16,22" has three and could be anything; "48,2,16" too.
    [GeneratedRegex(@"^[^,]*([0-9],[0-9]+){2,}$|[0-9],[0-9]+,[0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex OnlyCommas();

    [GeneratedRegex(
        @"(?<label>\b(latitude|longitude|long|lat|lon|lng)\b\s*[:=.]?)|(?<number>[0-9]+(\.[0-9]+)?)|(?<sign>[-+])|" +
        @"(?<unit>°|'|""|:|(?<=[0-9]\s*)(deg|d|min|m|sec)(?![a-z]))|" +
        @"(?<letter>(north|south|east|west|[NSEW])(?![a-z]))|(?<separator>[,;/|])|(?<space>[\s()\[\]]+)|(?<other>.)",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Token();
}
