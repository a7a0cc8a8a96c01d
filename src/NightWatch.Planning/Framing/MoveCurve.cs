using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Where a programmed move has brought the camera.</summary>
/// <remarks>
/// Speed rises and falls along half parabolas over the eased shares (engineering choice); eased half and half this is the curve
/// 3u² − 2u³, whose highest speed is 1.5 times the mean.
/// </remarks>
public static class MoveCurve
{
    /// <summary>Share of the move done after a share of its time, 0 to 1.</summary>
    /// <param name="time">Share of the time; held to 0 to 1.</param>
    /// <param name="easeIn">Share of the time spent speeding up, 0 to 0.5.</param>
    /// <param name="easeOut">Share of the time spent slowing down, 0 to 0.5.</param>
    public static double Done(double time, double easeIn, double easeOut)
    {
        var u = Math.Clamp(time, 0, 1);
        if (u < easeIn) return Ramp(u, easeIn, easeIn, easeOut);
        if (1 - u < easeOut) return 1 - Ramp(1 - u, easeOut, easeIn, easeOut);
        return HighestSpeed(easeIn, easeOut) * (u - easeIn / 3);
    }

    /// <summary>Highest speed as a multiple of the mean.</summary>
    public static double HighestSpeed(double easeIn, double easeOut) => 1 / (1 - (easeIn + easeOut) / 3);

    /// <summary>Heading after a share of the time; azimuth goes the shorter way round.</summary>
    public static Heading HeadingAt(Move move, double time) => Between(move.Start, move.End, Done(time, move.EaseIn, move.EaseOut));

    internal static Heading Between(Heading start, Heading end, double done)
    {
        var way = end.AzimuthDeg - start.AzimuthDeg;
        way -= 360 * Math.Round(way / 360);
        var azimuth = start.AzimuthDeg + done * way;
        return new Heading(
            azimuth - 360 * Math.Floor(azimuth / 360),
            start.AltitudeDeg + done * (end.AltitudeDeg - start.AltitudeDeg),
            start.RollDeg + done * (end.RollDeg - start.RollDeg));
    }

    private static double Ramp(double u, double share, double easeIn, double easeOut) =>
        HighestSpeed(easeIn, easeOut) * (u * u / share - u * u * u / (3 * share * share));
}
