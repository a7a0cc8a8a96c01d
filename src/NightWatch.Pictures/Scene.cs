namespace NightWatch.Pictures;

/// <summary>A drawing in logical pixels, y downwards; one model for the PNG of a letter and the SVG of a page.</summary>
/// <param name="Width">Logical pixels.</param>
/// <param name="Height">Logical pixels.</param>
/// <param name="Says">The message in words: title of the SVG, alt text of the PNG.</param>
/// <param name="Shapes">In the order of painting.</param>
internal sealed record Scene(double Width, double Height, string Says, IReadOnlyList<Shape> Shapes);

/// <summary>A point, logical pixels.</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>Where a text's x lies in it.</summary>
internal enum Anchor
{
    /// <summary>At its left end.</summary>
    Start,

    /// <summary>In its middle.</summary>
    Middle,

    /// <summary>At its right end.</summary>
    End,
}

/// <summary>What can be drawn. Closed.</summary>
internal abstract record Shape
{
    private Shape()
    {
    }

    /// <summary>A filled polygon. <paramref name="Color"/> is #rrggbb.</summary>
    public sealed record Area(IReadOnlyList<Spot> Outline, string Color) : Shape;

    /// <summary>A stroked line; <paramref name="Dash"/> 0 is solid, else dash and gap length.</summary>
    public sealed record Line(IReadOnlyList<Spot> Path, string Color, double Width, double Dash = 0) : Shape;

    /// <summary>A line of text on its baseline, with a halo of the paper's colour where it crosses other things.</summary>
    public sealed record Words(
        Spot At,
        string Text,
        double Size,
        bool Bold = false,
        Anchor Anchor = Anchor.Start,
        string Color = "#14181f",
        string? Halo = null) : Shape;
}
