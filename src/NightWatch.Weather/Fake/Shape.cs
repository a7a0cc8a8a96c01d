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

    /// <summary>Rises from a to b, stays 1, falls from c to d.</summary>
    public static double Hump(double a, double b, double c, double d, double x) => Step(a, b, x) * (1 - Step(c, d, x));

    /// <summary>max(x, 0) with a round corner of the given width.</summary>
    public static double Ramp(double x, double width) =>
        x > 30 * width ? x : width * Math.Log(1 + Math.Exp(x / width));
}
