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
        var u = CubicGuess(from, to, level);
        for (var i = 0; i < 60; i++)
        {
            var point = curve.At(u);
            if (point.Value < level == fromBelow) low = u;
            else high = u;
            var next = u + (level - point.Value) / point.Slope;
            if (!(next >= low && next <= high)) next = (low + high) / 2;
            var step = next - u;
            u = next;
            // Newton's next error is step² × bend / 2 slope: once that is below the tolerance another evaluation buys nothing.
            if (Math.Abs(step) < Tolerance || step * step * Math.Abs(point.Bend) < 2 * Tolerance * Math.Abs(point.Slope)) break;
        }

        return u;
    }

    // The cubic with the arc's values and slopes at both ends is within minutes of the crossing and costs no sine.
    private static double CubicGuess(in CurvePoint from, in CurvePoint to, double level)
    {
        var width = to.U - from.U;
        double a = from.Value - level, da = from.Slope * width, rise = to.Value - from.Value, db = to.Slope * width;
        var c2 = 3 * rise - 2 * da - db;
        var c3 = da + db - 2 * rise;
        var t = -a / rise;
        for (var i = 0; i < 3; i++)
        {
            var value = a + t * (da + t * (c2 + t * c3));
            var slope = da + t * (2 * c2 + 3 * t * c3);
            t = slope == 0 ? 0.5 : Math.Clamp(t - value / slope, 0, 1);
        }

        return from.U + t * width;
    }
}
