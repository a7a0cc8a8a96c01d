namespace NightWatch.Planning.Reasons;

/// <summary>Shares of a frame's worth, 0 to 1.</summary>
internal static class Share
{
    /// <summary>1 up to one value, 0 from another, straight between; NaN stays NaN. Where the two are one, it is a step.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="full">Up to here (or down to here, where it lies above <paramref name="nothing"/>) the share is 1.</param>
    /// <param name="nothing">From here on it is 0.</param>
    public static double Between(double value, double full, double nothing)
    {
        if (double.IsNaN(value)) return double.NaN;
        if (full == nothing) return value >= nothing ? 0 : 1;
        return Math.Clamp((nothing - value) / (nothing - full), 0, 1);
    }
}
