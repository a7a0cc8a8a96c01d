using SkiaSharp;

namespace NightWatch.Pictures;

/// <summary>Paints a scene with the bundled font; no system font is ever looked for, so the bytes are the same everywhere.</summary>
internal static class PngPicture
{
    private static readonly Lazy<SKTypeface> Regular = new(() => Load("DejaVuSans.ttf"));

    private static readonly Lazy<SKTypeface> Bold = new(() => Load("DejaVuSans-Bold.ttf"));

    /// <summary>PNG bytes at <paramref name="scale"/> device pixels a logical pixel; grey takes a third of the bytes of colour.</summary>
    public static byte[] Of(Scene scene, double scale, SKColorType colors = SKColorType.Gray8)
    {
        using var bitmap = new SKBitmap(
            (int)Math.Round(scene.Width * scale), (int)Math.Round(scene.Height * scale), colors, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale((float)scale);
        foreach (var shape in scene.Shapes) Draw(canvas, shape);
        if (colors == SKColorType.Gray8) return SixteenGreys.Png(bitmap.GetPixelSpan(), bitmap.RowBytes, bitmap.Width, bitmap.Height);
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.NoFilters, 9))
            ?? throw new InvalidOperationException("The picture could not be encoded.");
        return data.ToArray();
    }

    private static void Draw(SKCanvas canvas, Shape shape)
    {
        switch (shape)
        {
            case Shape.Area area:
                using (var path = PathOf(area.Outline, close: true))
                using (var paint = new SKPaint { Color = SKColor.Parse(area.Color), IsAntialias = true })
                    canvas.DrawPath(path, paint);
                break;
            case Shape.Line line:
                using (var path = PathOf(line.Path, close: false))
                using (var dash = line.Dash > 0 ? SKPathEffect.CreateDash([(float)line.Dash, (float)line.Dash], 0) : null)
                using (var paint = Stroke(line.Color, line.Width, dash))
                    canvas.DrawPath(path, paint);
                break;
            case Shape.Words words:
                Write(canvas, words);
                break;
        }
    }

    private static void Write(SKCanvas canvas, Shape.Words words)
    {
        using var font = new SKFont((words.Bold ? Bold : Regular).Value, (float)words.Size) { Subpixel = true };
        var align = words.Anchor switch { Anchor.Middle => SKTextAlign.Center, Anchor.End => SKTextAlign.Right, _ => SKTextAlign.Left };
        if (words.Halo is { } halo)
        {
            using var around = Stroke(halo, words.Size / 4, null);
            canvas.DrawText(words.Text, (float)words.At.X, (float)words.At.Y, align, font, around);
        }

        using var paint = new SKPaint { Color = SKColor.Parse(words.Color), IsAntialias = true };
        canvas.DrawText(words.Text, (float)words.At.X, (float)words.At.Y, align, font, paint);
    }

    private static SKPaint Stroke(string color, double width, SKPathEffect? effect) => new()
    {
        Color = SKColor.Parse(color),
        StrokeWidth = (float)width,
        Style = SKPaintStyle.Stroke,
        StrokeJoin = SKStrokeJoin.Round,
        StrokeCap = SKStrokeCap.Butt,
        PathEffect = effect,
        IsAntialias = true,
    };

    private static SKPath PathOf(IReadOnlyList<Spot> spots, bool close)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. spots.Select(s => new SKPoint((float)s.X, (float)s.Y))], close);
        return builder.Detach();
    }

    private static SKTypeface Load(string name)
    {
        using var stream = typeof(PngPicture).Assembly.GetManifestResourceStream($"Fonts/{name}")
            ?? throw new InvalidOperationException($"The font {name} is not in the assembly.");
        return SKTypeface.FromStream(stream);
    }
}
