namespace NightWatch.Sky.Events;

/// <summary>Where a body crosses the meridian.</summary>
internal static class Meridian
{
    /// <summary>The first crossing at an hour angle inside a span; NaN for none.</summary>
    /// <param name="curve">The body.</param>
    /// <param name="start">Of the span, included.</param>
    /// <param name="end">Of the span, excluded.</param>
    /// <param name="hourAngleRad">0 for the transit, π for the anti-transit.</param>
    public static double First(in AltitudeCurve curve, double start, double end, double hourAngleRad)
    {
        var (now, rate) = curve.HourAngle(start);
        var turn = Math.Tau / rate;
        var behind = (hourAngleRad - now) / rate;
        // One turn early, in case the estimate from the span's start passes over a crossing just inside it.
        var estimate = start + behind - turn * Math.Floor(behind / turn) - turn;
        for (; estimate < end + turn / 2; estimate += turn)
        {
            var u = Nearest(curve, estimate, hourAngleRad);
            if (u >= start) return u < end ? u : double.NaN;
        }

        return double.NaN;
    }

    /// <summary>The crossing nearest to an argument.</summary>
    public static double Nearest(in AltitudeCurve curve, double u, double hourAngleRad)
    {
        for (var i = 0; i < 8; i++)
        {
            var (now, rate) = curve.HourAngle(u);
            var step = Math.IEEERemainder(hourAngleRad - now, Math.Tau) / rate;
            u += step;
            if (Math.Abs(step) < 1e-6) break;
        }

        return u;
    }
}
