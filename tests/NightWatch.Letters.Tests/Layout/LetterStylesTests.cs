using System.Globalization;
using System.Text.RegularExpressions;
using NightWatch.Letters.Layout;

namespace NightWatch.Letters.Tests.Layout;

/// <summary>
/// WCAG 2.2, success criterion 1.4.3: text stands 4.5:1 against its ground; formulae from its definitions of contrast ratio and relative
/// luminance.
/// </summary>
public sealed partial class LetterStylesTests
{
    [Fact]
    public void The_ratio_of_black_on_white_is_21() => Assert.Equal(21.0, Ratio("#000000", "#ffffff"), 6); // WCAG 2.2, definition

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Every_text_stands_out_from_its_ground(bool dark)
    {
        var light = Rules(LetterStyles.Light);
        var rules = dark ? Rules(LetterStyles.DarkRules) : light;
        var sheet = rules["sheet"];
        foreach (var (name, rule) in light)
        {
            var shown = dark && rules.TryGetValue(name, out var darker) ? darker : dark ? (Color: null, Background: null) : rule;
            if (name is "page" || (rule.Color is null && rule.Background is null)) continue;
            Assert.True(!dark || rule.Color is null || shown.Color is not null, $".{name} has no colour for dark screens.");
            var ratio = Ratio(shown.Color ?? sheet.Color!, shown.Background ?? sheet.Background!);
            Assert.True(ratio >= 4.5, $".{name} has {ratio:F2}:1");
        }
    }

    private static Dictionary<string, (string? Color, string? Background)> Rules(string css)
    {
        var rules = new Dictionary<string, (string?, string?)>();
        foreach (Match rule in Rule().Matches(css))
        {
            foreach (var selector in rule.Groups["names"].Value.Split(','))
            {
                var body = rule.Groups["body"].Value;
                var name = selector.Trim().TrimStart('.');
                var (color, background) = rules.GetValueOrDefault(name);
                rules[name] = (Value(body, "(?<![-a-z])color") ?? color, Value(body, "(?<![-a-z])background") ?? background);
            }
        }

        return rules;
    }

    private static string? Value(string body, string property) =>
        Regex.Match(body, property + @":\s*(#[0-9a-f]{6})") is { Success: true } m ? m.Groups[1].Value : null;

    private static double Ratio(string a, string b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string color)
    {
        double Channel(int at)
        {
            var c = int.Parse(color.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }

        return 0.2126 * Channel(1) + 0.7152 * Channel(3) + 0.0722 * Channel(5);
    }

    [GeneratedRegex(@"(?<names>\.[\w, .]+)\s*\{(?<body>[^}]*)\}")]
    private static partial Regex Rule();
}
