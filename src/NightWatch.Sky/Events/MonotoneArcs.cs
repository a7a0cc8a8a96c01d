namespace NightWatch.Sky.Events;

/// <summary>Cuts a curve into arcs on which it only rises or only falls, so that no crossing can hide between two samples.</summary>
/// <remarks>
/// An altitude is a sine wave of the hour angle plus a slow drift. Its slope is monotone between hour angles 0, 6, 12, 18 h (where the
/// bend of the wave changes sign), so the signs of the slope at these points say exactly where an extremum lies: also close to a pole,
/// where drift and wave are of a size and extrema come near each other or vanish.
/// </remarks>
internal static class MonotoneArcs
{
    /// <summary>Room for the knots of 25 hours: two ends, five quarter turns, an extremum between any two.</summary>
    public const int MaxKnots = 16;

    // slope² / 2 bend is how far a value is from the extremum's: 1e-14 is two billionths of an arcsecond.
    private const double ValueTolerance = 1e-14;
    private const double ArgumentTolerance = 1e-9;

    /// <summary>Fills in the ends, the quarter turns and the extrema between them, in order of time.</summary>
    /// <returns>How many.</returns>
    public static int Divide(in AltitudeCurve curve, double start, double end, Span<CurvePoint> room)
    {
        var middle = (start + end) / 2;
        var (hourAngle, rate) = curve.HourAngle(middle);
        var quarter = Math.PI / 2 / rate;
        var meridian = middle - hourAngle / rate;
        var next = meridian + Math.Ceiling((start - meridian) / quarter) * quarter;
        room[0] = curve.At(start);
        var count = 1;
        for (; next < end; next += quarter) count = Append(curve, room, count, curve.At(next));
        return Append(curve, room, count, curve.At(end));
    }

    private static int Append(in AltitudeCurve curve, Span<CurvePoint> room, int count, CurvePoint point)
    {
        var last = room[count - 1];
        if (last.Slope * point.Slope < 0) room[count++] = Extremum(curve, last, point);
        room[count++] = point;
        return count;
    }

    private static CurvePoint Extremum(in AltitudeCurve curve, CurvePoint low, CurvePoint high)
    {
        var rising = low.Slope > 0;
        var at = Math.Abs(low.Slope) < Math.Abs(high.Slope) ? low : high;
        while (high.U - low.U > ArgumentTolerance)
        {
            // Near a pole the bend is not the wave's alone and Newton's step may leave the bracket.
            var u = at.U - at.Slope / at.Bend;
            at = curve.At(u > low.U && u < high.U ? u : (low.U + high.U) / 2);
            if (at.Slope * at.Slope < 2 * ValueTolerance * Math.Abs(at.Bend)) break;
            if (at.Slope > 0 == rising) low = at;
            else high = at;
        }

        return at;
    }
}
