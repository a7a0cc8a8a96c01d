namespace NightWatch.Weather.Fake;

/// <summary>The few curves the invented weather is drawn with.</summary>
internal static class Shape
{
    /// <summary>0 up to <paramref name="from"/>, 1 from <paramref name="to"/> on, smooth between; falls where from is greater.</summary>
    public static double Step(double from, double to, double x)
    {
        var s = Math.Clamp((x - from) / (to - from), 0, 1);
        return s * s * (3 - 2 * s);
    }
}
