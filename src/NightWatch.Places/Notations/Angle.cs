using System.Globalization;
using System.Text.RegularExpressions;

namespace NightWatch.Places.Notations;

/// <summary>Which way an angle is counted.</summary>
internal enum Axis
{
    Latitude,
    Longitude,
}

internal enum TokenKind
{
    Label,
    Number,
    Sign,
    Unit,
    Letter,
    Separator,
    Space,
    Other,
}

/// <summary>A piece of a written angle.</summary>
internal readonly record struct DegreeToken(TokenKind Kind, string Text)
{
    public static DegreeToken Of(Match match) => new(
        match.Groups["label"].Success ? TokenKind.Label
            : match.Groups["number"].Success ? TokenKind.Number
            : match.Groups["sign"].Success ? TokenKind.Sign
            : match.Groups["unit"].Success ? TokenKind.Unit
            : match.Groups["letter"].Success ? TokenKind.Letter
            : match.Groups["separator"].Success ? TokenKind.Separator
            : match.Groups["space"].Success ? TokenKind.Space
            : TokenKind.Other,
        match.Value);

    public Axis? Axis => Kind switch
    {
        TokenKind.Label => Text.StartsWith("la", StringComparison.OrdinalIgnoreCase) ? Notations.Axis.Latitude : Notations.Axis.Longitude,
        TokenKind.Letter => char.ToUpperInvariant(Text[0]) is 'N' or 'S' ? Notations.Axis.Latitude : Notations.Axis.Longitude,
        _ => null,
    };

    public bool IsDegree => Kind == TokenKind.Unit && (Text == "°" || Text.StartsWith('d') || Text.StartsWith('D'));
}

/// <summary>One angle out of its pieces.</summary>
/// <param name="Deg">Degrees, north and east positive.</param>
/// <param name="Axis">Null: the text does not say.</param>
/// <param name="Parts">1: degrees; 2: with minutes; 3: with seconds.</param>
/// <param name="Fault">What is wrong, without a full stop; null: nothing.</param>
internal readonly record struct Angle(double Deg, Axis? Axis, int Parts, string? Fault)
{
    public static Angle Of(IReadOnlyList<DegreeToken> tokens)
    {
        var numbers = tokens.Where(token => token.Kind == TokenKind.Number).ToArray();
        if (numbers.Length is 0 or > 3) return Wrong("An angle has one to three numbers: degrees, minutes, seconds");
        if (numbers.SkipLast(1).Any(number => number.Text.Contains('.', StringComparison.Ordinal)))
            return Wrong("Only the last number of an angle has decimals");
        var values = numbers.Select(number => double.Parse(number.Text, CultureInfo.InvariantCulture)).ToArray();
        if (values.Skip(1).Any(value => value >= 60)) return Wrong("Minutes and seconds are below 60");
        var signs = tokens.Where(token => token.Kind == TokenKind.Sign).ToArray();
        var firstNumber = tokens.Select((token, i) => (token, i)).First(pair => pair.token.Kind == TokenKind.Number).i;
        if (signs.Length > 1 || (signs.Length == 1 && (firstNumber == 0 || tokens[firstNumber - 1].Kind != TokenKind.Sign)))
            return Wrong("A sign stands before the degrees");
        var letters = tokens.Where(token => token.Kind == TokenKind.Letter).ToArray();
        if (letters.Length > 1) return Wrong("An angle has one letter of N, S, E, W");
        var isMinus = signs.Any(sign => sign.Text == "-");
        if (isMinus && letters.Length == 1) return Wrong("An angle has a sign or a letter, not both");
        var axes = tokens.Select(token => token.Axis).Where(axis => axis is not null).Distinct().ToArray();
        if (axes.Length > 1) return Wrong("A label and a letter disagree");
        var size = values[0] + values.ElementAtOrDefault(1) / 60 + values.ElementAtOrDefault(2) / 3600;
        var isNegative = isMinus || letters.Any(letter => char.ToUpperInvariant(letter.Text[0]) is 'S' or 'W');
        return new Angle(isNegative ? -size : size, axes.FirstOrDefault(), values.Length, null);
    }

    private static Angle Wrong(string fault) => new(0, null, 0, fault);
}

/// <summary>Finds where the first angle ends and the second begins.</summary>
internal static class AngleSplit
{
    /// <summary>Null: there is no such place.</summary>
    public static (IReadOnlyList<DegreeToken> First, IReadOnlyList<DegreeToken> Second)? InTwo(IReadOnlyList<DegreeToken> tokens)
    {
        if (BreakOf(tokens) is not ({ } at and > 0)) return null;
        return ([.. tokens.Take(at)], [.. tokens.Skip(at)]);
    }

    private static int? BreakOf(IReadOnlyList<DegreeToken> tokens)
    {
        var labels = At(tokens, token => token.Kind == TokenKind.Label);
        if (labels.Count == 2) return labels[1];
        var letters = At(tokens, token => token.Kind == TokenKind.Letter);
        // Letters before their numbers or after them.
        if (letters.Count == 2)
            return letters[0] == 0 || tokens.Take(letters[0]).All(token => token.Kind == TokenKind.Label) ? letters[1] : letters[0] + 1;
        var separators = At(tokens, token => token.Kind == TokenKind.Separator);
        if (separators.Count > 0) return separators.Count == 1 ? separators[0] : null;
        var degrees = At(tokens, token => token.IsDegree);
        if (degrees.Count == 2) return WithSign(tokens, degrees[1] - 1);
        if (letters.Count > 0 || labels.Count > 0) return null;
        // Colons bind; otherwise the numbers fall into two halves.
        var starts = At(tokens, token => token.Kind == TokenKind.Number).Where(i => i == 0 || tokens[i - 1].Text != ":").ToArray();
        if (tokens.Any(token => token.Text == ":")) return starts.Length == 2 ? WithSign(tokens, starts[1]) : null;
        return starts.Length is 2 or 4 or 6 ? WithSign(tokens, starts[starts.Length / 2]) : null;
    }

    private static int WithSign(IReadOnlyList<DegreeToken> tokens, int number) =>
        number > 0 && tokens[number - 1].Kind == TokenKind.Sign ? number - 1 : number;

    private static List<int> At(IReadOnlyList<DegreeToken> tokens, Func<DegreeToken, bool> which) =>
        [.. Enumerable.Range(0, tokens.Count).Where(i => which(tokens[i]))];
}
