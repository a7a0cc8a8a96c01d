using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;

namespace NightWatch.Pictures;

/// <summary>Writes a scene as a self-contained SVG element, for a page.</summary>
internal static class SvgPicture
{
    /// <summary>The element, with the message as its accessible name.</summary>
    public static string Of(Scene scene)
    {
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Number(scene.Width)} {Number(scene.Height)}\" " +
            $"role=\"img\"><title>{Encode(scene.Says)}</title>");
        svg.Append(
            CultureInfo.InvariantCulture, $"<rect width=\"{Number(scene.Width)}\" height=\"{Number(scene.Height)}\" fill=\"#ffffff\"/>");
        foreach (var shape in scene.Shapes) svg.Append(Element(shape));
        return svg.Append("</svg>").ToString();
    }

    private static string Element(Shape shape) =>
        shape switch
        {
            Shape.Area a => $"<path d=\"{Path(a.Outline)}Z\" fill=\"{a.Color}\"/>",
            Shape.Line l => $"<path d=\"{Path(l.Path)}\" fill=\"none\" stroke=\"{l.Color}\" stroke-width=\"{Number(l.Width)}\""
                + (l.Dash > 0 ? $" stroke-dasharray=\"{Number(l.Dash)}\"" : "")
                + "/>",
            Shape.Words w =>
                $"<text x=\"{Number(w.At.X)}\" y=\"{Number(w.At.Y)}\" font-family=\"DejaVu Sans, sans-serif\" " +
                $"font-size=\"{Number(w.Size)}\" fill=\"{w.Color}\""
                    + (w.Bold ? " font-weight=\"bold\"" : "")
                    + w.Anchor switch
                    {
                        Anchor.Middle => " text-anchor=\"middle\"",
                        Anchor.End => " text-anchor=\"end\"",
                        _ => "",
                    }
                    + (w.Halo is { } halo ? $" stroke=\"{halo}\" stroke-width=\"{Number(w.Size / 4)}\" paint-order=\"stroke\"" : "")
                    + $">{Encode(w.Text)}</text>",
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Unknown shape."),
        };

    private static string Path(IReadOnlyList<Spot> spots)
    {
        var path = new StringBuilder();
        for (var i = 0; i < spots.Count; i++)
            path.Append(i == 0 ? 'M' : 'L').Append(Number(spots[i].X)).Append(' ').Append(Number(spots[i].Y));
        return path.ToString();
    }

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Encode(string text) => HtmlEncoder.Default.Encode(text);
}
