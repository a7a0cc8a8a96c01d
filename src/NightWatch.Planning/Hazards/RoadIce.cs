namespace NightWatch.Planning.Hazards;

/// <summary>How likely the drive meets ice.</summary>
public enum RoadIceRisk
{
    /// <summary>None by this forecast.</summary>
    None,

    /// <summary>Ice is possible in hollows, on bridges, in shade.</summary>
    Possible,

    /// <summary>Freezing and wet, or frost forming.</summary>
    Likely,
}

/// <summary>Ice on the road from temperature, cloud and water. Engineering choice throughout: no road is surveyed here.</summary>
public static class RoadIce
{
    /// <summary>The risk at one instant.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="dewPointC">Dew point, °C.</param>
    /// <param name="cloud">Cloud, fraction.</param>
    /// <param name="roadIsWet">It rains, or rained and the ground has not dried.</param>
    /// <returns>Null: air temperature or cloud is unknown.</returns>
    /// <remarks>
    /// A road under a clear night sky is taken to be 3 K colder than the air at 2 m, under cloud as warm. Frost forms where the road is
    /// below freezing and below the dew point.
    /// </remarks>
    public static RoadIceRisk? At(double airC, double dewPointC, double cloud, bool roadIsWet)
    {
        if (double.IsNaN(airC) || double.IsNaN(cloud)) return null;
        var roadC = airC - 3 * (1 - Math.Clamp(cloud, 0, 1));
        var frost = roadC <= 0 && roadC <= dewPointC;
        if (roadC > 1 || (!roadIsWet && !frost)) return RoadIceRisk.None;
        return roadC <= -1 ? RoadIceRisk.Likely : RoadIceRisk.Possible;
    }
}
