namespace NightWatch.Sky.Events;

/// <summary>Where a curve passes a level.</summary>
internal static class Crossing
{
    // 0.1 ms.
    private const double Tolerance = 1e-9;

    /// <summary>The argument at which the curve passes the level, on an arc whose ends lie on both sides of it.</summary>
    public static double On(in AltitudeCurve curve, in CurvePoint from, in CurvePoint to, double level)
    {
        double low = from.U, high = to.U;
        var fromBelow = from.Value < level;
        var u = QuinticGuess(from, to, level);
        for (var i = 0; i < 60; i++)
        {
            var point = curve.At(u);
            if (point.Value < level == fromBelow) low = u;
            else high = u;
            // Halley's step: Newton's, bent. With the wave's own bend at hand it needs one evaluation less.
            var over = point.Value - level;
            var next = u - 2 * over * point.Slope / (2 * point.Slope * point.Slope - over * point.Bend);
            if (!(next >= low && next <= high)) next = (low + high) / 2;
            var step = next - u;
            u = next;
            if (Left(Math.Abs(step), Math.Abs(point.Bend / (2 * point.Slope))) < Tolerance) break;
        }

        return u;
    }

    // What the next step would be: Halley's cubic error on a sine wave of 2.2 turns, and a quadratic one, since the bend leaves out the
    // body's own motion (4 % for the Moon). Once that is below the tolerance another evaluation buys nothing.
    private static double Left(double step, double ratio) => step * step * (0.14 + 0.04 * ratio + step * (ratio * ratio + 8));

    // The quintic through the arc's values, slopes and bends at both ends is within seconds of the crossing and costs no sine.
    private static double QuinticGuess(in CurvePoint from, in CurvePoint to, double level)
    {
        var width = to.U - from.U;
        double a = from.Value - level, da = from.Slope * width, bend = from.Bend * width * width / 2;
        var rise = to.Value - from.Value;
        var value = rise - da - bend;
        var slope = to.Slope * width - da - 2 * bend;
        var half = to.Bend * width * width / 2 - bend;
        var c3 = 10 * value - 4 * slope + half;
        var c4 = -15 * value + 7 * slope - 2 * half;
        var c5 = 6 * value - 3 * slope + half;
        var t = -a / rise;
        for (var i = 0; i < 3; i++)
        {
            var height = a + t * (da + t * (bend + t * (c3 + t * (c4 + t * c5))));
            var rate = da + t * (2 * bend + t * (3 * c3 + t * (4 * c4 + t * 5 * c5)));
            t = rate == 0 ? 0.5 : Math.Clamp(t - height / rate, 0, 1);
        }

        return from.U + t * width;
    }
}
