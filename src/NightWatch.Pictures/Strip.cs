namespace NightWatch.Pictures;

/// <summary>How one curve of a strip is drawn.</summary>
internal enum CurveStyle
{
    /// <summary>A heavy line.</summary>
    Solid,

    /// <summary>A dashed line.</summary>
    Dashed,

    /// <summary>Filled down to the strip's foot.</summary>
    Filled,

    /// <summary>A line; what lies below zero is filled up to the zero line.</summary>
    FilledBelowZero,
}

/// <summary>One quantity over the night; null is unknown and leaves a gap.</summary>
/// <param name="Values">One a condition step.</param>
/// <param name="Style">How it is drawn.</param>
/// <param name="Label">Stands beside its highest point; null: none.</param>
internal sealed record Curve(IReadOnlyList<double?> Values, CurveStyle Style, string? Label = null);

/// <summary>What a strip shows.</summary>
/// <param name="Name">Bold words above it.</param>
/// <param name="Figures">Plain words at the right end of the same line.</param>
/// <param name="HeightPx">Of the plot.</param>
/// <param name="Low">Value at its foot.</param>
/// <param name="High">Value at its head.</param>
/// <param name="Marks">Values with a label at the left edge; the one that is a limit is ruled across.</param>
/// <param name="LimitAt">A value ruled across the strip; null: none.</param>
/// <param name="Curves">In the order of painting.</param>
internal sealed record StripContent(
    string Name,
    string Figures,
    double HeightPx,
    double Low,
    double High,
    IReadOnlyList<(double Value, string Label)> Marks,
    double? LimitAt,
    IReadOnlyList<Curve> Curves);

/// <summary>A strip of the chart in its place.</summary>
internal sealed class Strip(StripContent content, double top, IReadOnlyList<double> xs)
{
    private const double CaptionPx = 38;
    private const string Ink = "#14181f";
    private const string Fill = "#5d6878";

    /// <summary>Upper edge of the plot.</summary>
    public double Top { get; } = top;

    /// <summary>Lower edge of the plot.</summary>
    public double Bottom => Top + content.HeightPx;

    /// <summary>Places strips one under the other.</summary>
    public static IReadOnlyList<Strip> Stack(TimeAxis axis, NightStrips strips)
    {
        IReadOnlyList<double> xs = [.. strips.Times.Select(axis.X)];
        var placed = new List<Strip>();
        var y = TimeAxis.HeadPx;
        foreach (var content in strips.Contents)
        {
            placed.Add(new Strip(content, y + CaptionPx, xs));
            y = placed[^1].Bottom;
        }

        return placed;
    }

    /// <summary>Everything but the shades behind.</summary>
    public IEnumerable<Shape> Paint(TimeAxis axis)
    {
        yield return new Shape.Words(new Spot(TimeAxis.LeftPx, Top - 9), content.Name, 22, Bold: true);
        yield return new Shape.Words(new Spot(TimeAxis.RightPx, Top - 9), content.Figures, 22, Anchor: Anchor.End);
        foreach (var curve in content.Curves)
        {
            foreach (var shape in Draw(curve)) yield return shape;
        }

        if (content.LimitAt is { } limit)
            yield return new Shape.Line([new(TimeAxis.LeftPx, Y(limit)), new(TimeAxis.RightPx, Y(limit))], Ink, 1.5, 3);
        foreach (var (value, label) in content.Marks)
            yield return new Shape.Words(
                new Spot(TimeAxis.LeftPx - 8, Math.Clamp(Y(value) + 7, Top + 16, Bottom)), label, 19, Anchor: Anchor.End);
        yield return new Shape.Line(
            [
                new(TimeAxis.LeftPx, Top), new(TimeAxis.RightPx, Top), new(TimeAxis.RightPx, Bottom), new(TimeAxis.LeftPx, Bottom),
                new(TimeAxis.LeftPx, Top),
            ],
            "#7d8592",
            1);
        if (content.Curves.All(c => c.Values.All(v => v is null)))
            yield return new Shape.Words(
                new Spot((TimeAxis.LeftPx + TimeAxis.RightPx) / 2, (Top + Bottom) / 2 + 8),
                axis.Speech.Language.Unknown,
                22,
                Anchor: Anchor.Middle,
                Halo: "#ffffff");
    }

    private IEnumerable<Shape> Draw(Curve curve)
    {
        foreach (var run in Stretches(curve.Values))
        {
            Spot[] line = [.. run.Select(i => new Spot(xs[i], Y(curve.Values[i]!.Value)))];
            if (curve.Style == CurveStyle.Filled)
                yield return new Shape.Area([new(line[0].X, Bottom), .. line, new(line[^1].X, Bottom)], Fill);
            if (curve.Style == CurveStyle.FilledBelowZero && line.Any(s => s.Y > Y(0)))
                yield return new Shape.Area(
                    [new(line[0].X, Y(0)), .. line.Select(s => s with { Y = Math.Max(s.Y, Y(0)) }), new(line[^1].X, Y(0))], Fill);
            yield return new Shape.Line(line, Ink, curve.Style == CurveStyle.Dashed ? 3 : 3.5, curve.Style == CurveStyle.Dashed ? 8 : 0);
        }

        if (curve.Label is null || curve.Values.Max() is not { } most || most < content.Low) yield break;
        var peak = curve.Values.ToList().IndexOf(most);
        var half = curve.Label.Length * 8.0;
        var x = Math.Max(TimeAxis.Inside(xs[peak], half + TimeAxis.MarginPx), TimeAxis.LeftPx + half);
        var at = new Spot(x, Math.Max(Y(most) - 10, Top + 22));
        yield return new Shape.Words(at, curve.Label, 21, Bold: true, Anchor.Middle, Halo: "#ffffff");
    }

    // Known neighbours, cut where the curve leaves the strip's foot for good.
    private IEnumerable<List<int>> Stretches(IReadOnlyList<double?> values)
    {
        var run = new List<int>();
        for (var i = 0; i <= values.Count; i++)
        {
            if (i < values.Count && values[i] is { } v && v >= content.Low)
            {
                run.Add(i);
                continue;
            }

            if (run.Count > 1) yield return run;
            run = [];
        }
    }

    private double Y(double value) => Bottom - content.HeightPx * Math.Clamp((value - content.Low) / (content.High - content.Low), 0, 1);
}
