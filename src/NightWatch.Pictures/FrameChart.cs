using System.Globalization;
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
        var clock = Speech.To(plan.Watch).Clock;
        var first = framing.Path[0];
        var place = first is { Across: { } across, Up: { } up } && first.IsIn
            ? $"At the first frame it stands {Side(across, "right", "left")} and {Side(up, "up", "down")} of the centre. "
            : "";
        return $"Path of the subject across the frame of {Degrees(framing.FieldAcrossDeg)} by {Degrees(framing.FieldUpDeg)}. {place}{InFrame(framing, sequence, clock)}";
    }

    /// <summary>The subject's place on the picture at each point of its path; empty: nothing is framed this night.</summary>
    public static IReadOnlyList<FrameMark> MarksOf(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan is not { Framing: { } framing, Sequence: { } sequence }) return [];
        var clock = Speech.To(plan.Watch).Clock;
        var view = new FrameView(framing);
        return [.. framing.Path.Select(point => MarkOf(point, sequence, view, clock))];
    }

    /// <summary>Height of the picture, logical pixels; null: nothing is framed this night.</summary>
    public static double? HeightPx(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan is { Framing: { } framing, Sequence: not null } ? HeightOf(new FrameView(framing)) : null;
    }

    private static double HeightOf(FrameView view) => view.Foot + 91;

    private static FrameMark MarkOf(FramePathPoint point, Sequence sequence, FrameView view, ClockWords clock)
    {
        Spot? spot = point is { Across: { } x, Up: { } y } && view.At(x, y) is var at && view.Shows(at) ? at : null;
        var place = point is { Across: { } across, Up: { } up }
            ? $"{Side(across, "right", "left")} and {Side(up, "up", "down")} of the centre"
            : "behind the camera";
        var camera = string.Create(CultureInfo.InvariantCulture, $"azimuth {point.Camera.AzimuthDeg:0.0}°, altitude {point.Camera.AltitudeDeg:0.0}°");
        return new FrameMark(
            point.At, point.Shot, spot?.X, spot?.Y,
            $"{clock.Time(point.At)}, frame {point.Shot} of {sequence.Shots}: subject {place}, {(point.IsIn ? "in the frame" : "not in the frame")}; camera at {camera}.");
    }

    internal static Scene? SceneOf(NightPlan plan)
    {
        if (Says(plan) is not { } says || plan is not { Framing: { } framing, Sequence: { } sequence }) return null;
        var clock = Speech.To(plan.Watch).Clock;
        var view = new FrameView(framing);
        Shape[] shapes =
        [
            new Shape.Words(new Spot(FrameView.MarginPx, 30), "Subject in the frame", 22, Bold: true),
            new Shape.Words(new Spot(WidthPx - FrameView.MarginPx, 30), $"{plan.Watch.Kit.FocalLengthMm.ToString("0.#", CultureInfo.InvariantCulture)} mm, {Degrees(framing.FieldAcrossDeg)} × {Degrees(framing.FieldUpDeg)}", 20, Anchor: Anchor.End),
            .. view.Ground(framing, plan.Watch.Site.Horizon),
            .. view.Edges(),
            .. FramePath.Of(framing, sequence, view, clock),
            new Shape.Words(new Spot(FrameView.MarginPx, view.Foot + 28), InFrame(framing, sequence, clock), 19),
            new Shape.Words(new Spot(FrameView.MarginPx, view.Foot + 54), Headings(framing), 17, Color: "#3d4653"),
            new Shape.Words(new Spot(FrameView.MarginPx, view.Foot + 77), Foreground(framing), 17, Color: "#3d4653"),
        ];
        return new Scene(WidthPx, HeightOf(view), says, shapes);
    }

    private static string InFrame(FramingPlan framing, Sequence sequence, ClockWords clock)
    {
        var share = string.Create(CultureInfo.InvariantCulture, $"{100 * framing.ShareIn:0} % of {sequence.Shots} frames");
        return framing.Enters is not { } enters ? "The subject is never in the frame."
            : framing.ShareIn >= 1 ? $"In the frame throughout, {clock.Time(enters)} to {clock.Time(sequence.Span.End)}."
            : $"In the frame {clock.Time(enters)} to {clock.Time(framing.Leaves ?? sequence.Span.End)}: {share}.";
    }

    private static string Headings(FramingPlan framing)
    {
        var (start, end) = (framing.Move.Start, framing.Move.End);
        var first = $"azimuth {Degrees(start.AzimuthDeg)}, altitude {Degrees(start.AltitudeDeg)}";
        return start == end ? $"The camera stands at {first}." : $"The camera goes from {first} to {Degrees(end.AzimuthDeg)}, {Degrees(end.AltitudeDeg)}.";
    }

    private static string Foreground(FramingPlan framing) => framing.ForegroundAtStart + framing.ForegroundAtEnd == 0 ? "No foreground in the frame."
        : framing.Move.Start == framing.Move.End
        ? Share("Foreground, filled: {0} of the frame.", framing.ForegroundAtStart, 0)
        : Share("Foreground: {0} at the first frame (filled), {1} at the last (dashed).", framing.ForegroundAtStart, framing.ForegroundAtEnd);

    private static string Share(string format, double first, double last) =>
        string.Format(CultureInfo.InvariantCulture, format, $"{100 * first:0} %", $"{100 * last:0} %");

    private static string Side(double share, string positive, string negative) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(100 * share):0} % {(share >= 0 ? positive : negative)}");

    private static string Degrees(double value) => value.ToString("0", CultureInfo.InvariantCulture) + "°";
}
