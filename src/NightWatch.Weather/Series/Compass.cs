namespace NightWatch.Weather.Series;

/// <summary>Directions on the circle, degrees from north through east.</summary>
internal static class Compass
{
    /// <summary>The direction in [0, 360).</summary>
    public static double Normal(double deg)
    {
        var turned = deg % 360;
        turned = turned < 0 ? turned + 360 : turned;
        return turned >= 360 ? 0 : turned;
    }

    /// <summary>On the shorter way from one direction to another; clockwise where both ways are as long.</summary>
    /// <param name="fromDeg">At share 0.</param>
    /// <param name="toDeg">At share 1.</param>
    /// <param name="share">0 to 1.</param>
    public static double Between(double fromDeg, double toDeg, double share)
    {
        var turn = Normal(toDeg - fromDeg);
        return Normal(fromDeg + share * (turn > 180 ? turn - 360 : turn));
    }
}
