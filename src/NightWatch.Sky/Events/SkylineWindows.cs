using System.Runtime.Intrinsics;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Events;

/// <summary>When a fixed direction clears a site's skyline.</summary>
internal static class SkylineWindows
{
    private const double SampleStep = 1 / 1440.0 / DayFit.HalfWidthDays;
    private const double Tolerance = 1e-8;

    /// <summary>The parts of windows in which the direction also stands at or above the skyline.</summary>
    public static Windows Of(DayFit fit, in Observer observer, Vector3D icrs, in Windows within, HorizonProfile horizon)
    {
        Span<Vector256<double>> track = stackalloc Vector256<double>[DayFit.FixedTerms];
        fit.Fixed(icrs, track);
        var curve = AltitudeCurve.OfFixed(track, observer);
        var clear = new Windows();
        for (var i = 0; i < within.Count; i++) Scan(curve, horizon, within[i], ref clear);
        return clear;
    }

    // The skyline has corners where the curve has none, so arcs of the altitude do not help: minute by minute, then bisection. A touch
    // shorter than a minute (of an invented ruler-straight ridge: four hundredths of a degree at most) may pass unseen.
    private static void Scan(in AltitudeCurve curve, HorizonProfile horizon, Window window, ref Windows clear)
    {
        var start = window.Start;
        var above = Clears(curve, horizon, start);
        var before = start;
        while (before < window.End)
        {
            var now = Math.Min(before + SampleStep, window.End);
            if (Clears(curve, horizon, now) != above)
            {
                var crossing = Bisect(curve, horizon, before, now, above);
                if (above) clear.Add(start, crossing);
                else start = crossing;
                above = !above;
            }

            before = now;
        }

        if (above) clear.Add(start, window.End);
    }

    private static double Bisect(in AltitudeCurve curve, HorizonProfile horizon, double low, double high, bool lowClears)
    {
        while (high - low > Tolerance)
        {
            var middle = (low + high) / 2;
            if (Clears(curve, horizon, middle) == lowClears) low = middle;
            else high = middle;
        }

        return high;
    }

    private static bool Clears(in AltitudeCurve curve, HorizonProfile horizon, double u)
    {
        var direction = Horizontal.Of(curve.Local(u));
        return direction.AltitudeDeg >= horizon.AltitudeDegAt(direction.AzimuthDeg);
    }
}
