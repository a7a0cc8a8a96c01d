using System.Globalization;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Words;

namespace NightWatch.Pictures;

/// <summary>
/// What share of the nights each source told: a bar a source over the same nights, in parts that differ in form and not in
/// colour alone, with the number of nights in each that has room for it.
/// </summary>
public static class SourcePicture
{
    private const double LeftPx = 6;
    private const double BarPx = 370;
    private const double BarHeightPx = 22;
    private const double RowPx = 54;
    private const double TopPx = 8;
    private const double WidthPx = LeftPx + BarPx + 24;
    private const double LegendRowPx = 22;
    private const string Ink = "#14181f";
    private const string Faint = "#5d6878";
    private const string Good = "#14514a";
    private const string Bad = "#8c1c1c";
    private const string Paper = "#ffffff";

    /// <summary>A part that is narrower has no room for its number.</summary>
    private const double RoomPx = 22;

    /// <summary>The picture as an SVG element; null: no source said anything.</summary>
    /// <param name="tallies">Of the same nights, at least one night each.</param>
    /// <param name="language">In which it speaks.</param>
    public static string? Svg(IReadOnlyList<SourceTally> tallies, ILanguage language) =>
        SceneOf(tallies, language) is { } scene ? SvgPicture.Of(scene) : null;

    internal static Scene? SceneOf(IReadOnlyList<SourceTally> tallies, ILanguage language)
    {
        ArgumentNullException.ThrowIfNull(tallies);
        if (tallies.Count == 0) return null;
        var axis = TopPx + tallies.Count * RowPx + 4;
        Shape[] shapes =
        [
            .. tallies.SelectMany((tally, row) => Row(tally, TopPx + row * RowPx, language)),
            .. Axis(axis),
            .. Legend(axis + 40, language),
        ];
        return new Scene(WidthPx, axis + 40 + 2 * LegendRowPx, language.SourceTallies(tallies), shapes);
    }

    private static IEnumerable<Shape> Row(SourceTally tally, double y, ILanguage language)
    {
        yield return new Shape.Words(new(LeftPx, y + 14), language.SourceName(tally.Source), 13, Color: Ink);
        var from = 0;
        foreach (var part in Enum.GetValues<ToldPart>())
        {
            if (tally.Of(part) is not (> 0 and var nights)) continue;
            var (left, right) = (X(from, tally.Nights), X(from + nights, tally.Nights));
            from += nights;
            foreach (var shape in Fill(part, left, right, y + 20, BarHeightPx)) yield return shape;
            if (right - left < RoomPx) continue;
            var text = nights.ToString(CultureInfo.InvariantCulture);
            var at = new Spot((left + right) / 2, y + 20 + BarHeightPx / 2 + 4.5);
            yield return part == ToldPart.Usable
                ? new Shape.Words(at, text, 12, Bold: true, Anchor.Middle, Paper)
                : new Shape.Words(at, text, 12, Bold: true, Anchor.Middle, Ink, Paper);
        }
    }

    private static double X(int nights, int of) => LeftPx + BarPx * nights / of;

    /// <summary>Full; barred upright; stippled slantwise; empty.</summary>
    private static IEnumerable<Shape> Fill(ToldPart part, double left, double right, double top, double height)
    {
        var (bottom, color) = (top + height, part switch { ToldPart.Usable => Good, ToldPart.Unusable => Bad, _ => Faint });
        Spot[] outline = [new(left, top), new(right, top), new(right, bottom), new(left, bottom)];
        yield return new Shape.Area(outline, part == ToldPart.Usable ? Good : Paper);
        if (part == ToldPart.Unusable)
        {
            for (var x = left + 4; x < right; x += 4) yield return new Shape.Line([new(x, top), new(x, bottom)], Bad, 1.4);
        }

        if (part == ToldPart.NotTold)
        {
            // Slanted lines from the lower edge, cut where the part ends.
            for (var x = left - height + 7; x < right; x += 7)
            {
                var (low, high) = (Math.Max(x, left), Math.Min(x + height, right));
                if (high > low) yield return new Shape.Line([new(low, bottom - (low - x)), new(high, bottom - (high - x))], Faint, 1.2, 3);
            }
        }

        yield return new Shape.Line([.. outline, outline[0]], color, part == ToldPart.Silent ? 0.8 : 1.2);
    }

    private static IEnumerable<Shape> Axis(double y)
    {
        yield return new Shape.Line([new(LeftPx, y), new(LeftPx + BarPx, y)], Ink, 1);
        for (var share = 0; share <= 100; share += 25)
        {
            var x = X(share, 100);
            yield return new Shape.Line([new(x, y), new(x, y + 4)], Ink, 1);
            var text = share == 100 ? "100 %" : share.ToString(CultureInfo.InvariantCulture);
            yield return new Shape.Words(new(x, y + 17), text, 12, Anchor: share == 0 ? Anchor.Start : Anchor.Middle, Color: Faint);
        }
    }

    private static IEnumerable<Shape> Legend(double y, ILanguage language) => Enum.GetValues<ToldPart>().SelectMany((part, i) =>
    {
        var (left, top) = (LeftPx + i % 2 * (WidthPx / 2), y + i / 2 * LegendRowPx);
        var name = new Shape.Words(new(left + 34, top + 1), language.ToldPart(part), 12, Color: Ink);
        return Fill(part, left, left + 26, top - 10, 14).Append(name);
    });
}
