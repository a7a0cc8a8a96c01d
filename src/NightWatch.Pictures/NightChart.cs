using NightWatch.Planning.Nights;
using NightWatch.Words;

namespace NightWatch.Pictures;

/// <summary>
/// The night at a glance: time across from sunset to sunrise, the shooting window bracketed above, and one under the other
/// the altitudes of subject and Moon, cloud, the lens above its dew point, and the sky's level in the frame where it is known.
/// </summary>
/// <remarks>
/// 720 logical pixels wide, drawn so that it still reads at half that on a phone and in black-and-white print: the figures that
/// matter are words above each strip, and lines differ by dash and not by colour alone.
/// </remarks>
public static class NightChart
{
    /// <summary>Logical width of the picture, pixels.</summary>
    public const int WidthPx = 720;

    /// <summary>PNG bytes.</summary>
    /// <param name="plan">The night; its conditions may be unknown, then the strips say so.</param>
    /// <param name="scale">Device pixels a logical pixel.</param>
    public static byte[] Png(NightPlan plan, double scale = 2) => PngPicture.Of(SceneOf(plan), scale);

    /// <summary>The same picture as an SVG element for a page.</summary>
    public static string Svg(NightPlan plan) => SvgPicture.Of(SceneOf(plan));

    /// <summary>The picture's message in words, for the alt text.</summary>
    public static string Says(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var speech = Speech.To(plan.Watch);
        return speech.Language.NightChart(plan.Night, plan.Verdict, plan.Summary, speech);
    }

    /// <summary>Where time runs in the picture, for a cursor over it; null: there is nothing to draw.</summary>
    public static ChartPlot? PlotOf(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Conditions.Count < 2) return null;
        var strips = Strip.Stack(new TimeAxis(plan), NightStrips.Of(plan));
        return new ChartPlot(
            WidthPx, strips[^1].Bottom + TimeAxis.FootPx, TimeAxis.LeftPx, TimeAxis.RightPx, strips[0].Top, strips[^1].Bottom);
    }

    internal static Scene SceneOf(NightPlan plan)
    {
        var says = Says(plan);
        if (plan.Conditions.Count < 2)
            return new Scene(WidthPx, 60, says, [new Shape.Words(new Spot(20, 38), Speech.To(plan.Watch).Language.NothingToDraw, 22)]);
        var axis = new TimeAxis(plan);
        var strips = Strip.Stack(axis, NightStrips.Of(plan));
        var bottom = strips[^1].Bottom;
        Shape[] shapes =
        [
            .. strips.SelectMany(strip => axis.Darkness(strip.Top, strip.Bottom)),
            .. strips.SelectMany(strip => strip.Paint(axis)),
            .. axis.Bracket(plan, strips),
            .. axis.Ticks(bottom),
        ];
        return new Scene(WidthPx, bottom + TimeAxis.FootPx, says, shapes);
    }
}
