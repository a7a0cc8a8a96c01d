using System.Globalization;
using NightWatch.Planning.Verification;
using NightWatch.Words;

namespace NightWatch.Pictures;

/// <summary>
/// What was said against what came: a point a tenth, on the diagonal where it came as often as said, with a bar for what chance may do and
/// the number of nights beside it. Tenths with too few nights are left out.
/// </summary>
public static class ReliabilityPicture
{
    private const double SidePx = 300;
    private const double LeftPx = 52;
    private const double TopPx = 16;
    private const double WidthPx = LeftPx + SidePx + 53;
    private const double HeightPx = TopPx + SidePx + 50;
    private const string Ink = "#14181f";
    private const string Faint = "#5d6878";

    /// <summary>The picture as an SVG element; null: no tenth has enough nights.</summary>
    /// <param name="bins">The tenths.</param>
    /// <param name="language">In which it speaks.</param>
    public static string? Svg(IReadOnlyList<ReliabilityBin> bins, ILanguage language) =>
        SceneOf(bins, language) is { } scene ? SvgPicture.Of(scene) : null;

    internal static Scene? SceneOf(IReadOnlyList<ReliabilityBin> bins, ILanguage language)
    {
        ArgumentNullException.ThrowIfNull(bins);
        ReliabilityBin[] shown = [.. bins.Where(bin => bin.IsShown)];
        if (shown.Length == 0) return null;
        Shape[] shapes =
        [
            .. Frame(language),
            .. shown.SelectMany(Bar),
            new Shape.Line([.. shown.Select(bin => At(bin.MeanSaid!.Value, bin.Frequency!.Value))], "#1d3f6e", 2),
            .. shown.SelectMany(Point),
        ];
        return new Scene(WidthPx, HeightPx, language.Reliability(bins), shapes);
    }

    private static Spot At(double said, double came) => new(LeftPx + said * SidePx, TopPx + (1 - came) * SidePx);

    private static IEnumerable<Shape> Frame(ILanguage language)
    {
        for (var tenth = 0; tenth <= 10; tenth += 2)
        {
            var share = tenth / 10.0;
            var text = string.Create(CultureInfo.InvariantCulture, $"{tenth * 10}");
            yield return new Shape.Line([At(0, share), At(1, share)], "#e6e2d6", 0.8);
            yield return new Shape.Line([At(share, 0), At(share, 1)], "#e6e2d6", 0.8);
            yield return new Shape.Words(new(LeftPx - 8, At(0, share).Y + 4), text, 12, Anchor: Anchor.End, Color: Faint);
            yield return new Shape.Words(new(At(share, 0).X, TopPx + SidePx + 18), text, 12, Anchor: Anchor.Middle, Color: Faint);
        }

        yield return new Shape.Line([At(0, 0), At(1, 1)], Faint, 1.2, 5);
        yield return new Shape.Line([At(0, 1), At(0, 0), At(1, 0)], Ink, 1.2);
        yield return new Shape.Words(new(LeftPx + 8, TopPx + 14), language.CameAxis, 12, Color: Ink, Halo: "#ffffff");
        yield return new Shape.Words(new(LeftPx + SidePx, TopPx + SidePx + 38), language.SaidAxis, 12, Anchor: Anchor.End, Color: Ink);
    }

    /// <summary>95 % by Wilson.</summary>
    private static IEnumerable<Shape> Bar(ReliabilityBin bin)
    {
        var (low, high) = (At(bin.MeanSaid!.Value, bin.Interval.Low), At(bin.MeanSaid.Value, bin.Interval.High));
        yield return new Shape.Line([low, high], "#7d97b8", 3);
    }

    private static IEnumerable<Shape> Point(ReliabilityBin bin)
    {
        var at = At(bin.MeanSaid!.Value, bin.Frequency!.Value);
        yield return new Shape.Area([new(at.X, at.Y - 5), new(at.X + 5, at.Y), new(at.X, at.Y + 5), new(at.X - 5, at.Y)], "#1d3f6e");
        yield return new Shape.Words(
            new(at.X + 9, at.Y + 13), bin.Count.ToString(CultureInfo.InvariantCulture), 11, Color: Ink, Halo: "#ffffff");
    }
}
