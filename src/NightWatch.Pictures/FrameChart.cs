using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Nights;
using NightWatch.Words;

namespace NightWatch.Pictures;

/// <summary>
/// The subject's way across the frame through the move: the frame as the camera sees it, the path with clock times, where the subject
/// comes in and leaves, and the skyline at the first and the last frame.
/// </summary>
public static class FrameChart
{
    /// <summary>Logical width of the picture, pixels.</summary>
    public const int WidthPx = 720;

    /// <summary>PNG bytes; null: nothing is framed this night.</summary>
    /// <param name="plan">The night.</param>
    /// <param name="scale">Device pixels a logical pixel.</param>
    public static byte[]? Png(NightPlan plan, double scale = 2) => SceneOf(plan) is { } scene ? PngPicture.Of(scene, scale) : null;

    /// <summary>The same picture as an SVG element for a page; null: nothing is framed this night.</summary>
    public static string? Svg(NightPlan plan) => SceneOf(plan) is { } scene ? SvgPicture.Of(scene) : null;

    /// <summary>The picture's message in words, for the alt text; null: nothing is framed this night.</summary>
    public static string? Says(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan is not { Framing: { } framing, Sequence: { } sequence }) return null;
        var speech = Speech.To(plan.Watch);
        return speech.Language.FrameChart(framing, sequence, speech);
    }

    /// <summary>The subject's place on the picture at each point of its path; empty: nothing is framed this night.</summary>
    public static IReadOnlyList<FrameMark> MarksOf(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan is not { Framing: { } framing, Sequence: { } sequence }) return [];
        var speech = Speech.To(plan.Watch);
        var view = new FrameView(framing);
        return [.. framing.Path.Select(point => MarkOf(point, sequence, view, speech))];
    }

    /// <summary>Height of the picture, logical pixels; null: nothing is framed this night.</summary>
    public static double? HeightPx(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan is { Framing: { } framing, Sequence: not null } ? HeightOf(new FrameView(framing)) : null;
    }

    private static double HeightOf(FrameView view) => view.Foot + 91;

    private static FrameMark MarkOf(FramePathPoint point, Sequence sequence, FrameView view, Speech speech)
    {
        Spot? spot = point is { Across: { } x, Up: { } y } && view.At(x, y) is var at && view.Shows(at) ? at : null;
        return new FrameMark(point.At, point.Shot, spot?.X, spot?.Y, speech.Language.AtFrame(point, sequence, speech));
    }

    internal static Scene? SceneOf(NightPlan plan)
    {
        if (Says(plan) is not { } says || plan is not { Framing: { } framing, Sequence: { } sequence }) return null;
        var speech = Speech.To(plan.Watch);
        var language = speech.Language;
        var view = new FrameView(framing);
        Shape[] shapes =
        [
            new Shape.Words(new Spot(FrameView.MarginPx, 30), language.FrameTitle, 22, Bold: true),
            new Shape.Words(
                new Spot(WidthPx - FrameView.MarginPx, 30),
                language.Field(plan.Watch.Kit.FocalLengthMm, framing, speech),
                20,
                Anchor: Anchor.End),
            .. view.Ground(framing, plan.Watch.Site.Horizon),
            .. view.Edges(),
            .. FramePath.Of(framing, sequence, view, speech),
            new Shape.Words(new Spot(FrameView.MarginPx, view.Foot + 28), language.InFrame(framing, sequence, speech), 19),
            new Shape.Words(new Spot(FrameView.MarginPx, view.Foot + 54), language.Headings(framing, speech), 17, Color: "#3d4653"),
            new Shape.Words(new Spot(FrameView.MarginPx, view.Foot + 77), language.Foreground(framing, speech), 17, Color: "#3d4653"),
        ];
        return new Scene(WidthPx, HeightOf(view), says, shapes);
    }
}
