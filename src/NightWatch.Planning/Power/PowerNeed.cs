namespace NightWatch.Planning.Power;

/// <summary>What the night asks of the batteries.</summary>
public sealed record PowerNeed
{
    /// <summary>Packs that feed camera and rail, Wh each, in the order of use.</summary>
    public required IReadOnlyList<double> BatteriesWh { get; init; }

    /// <summary>Draw of camera and rail, W.</summary>
    public required double CameraAndRailW { get; init; }

    /// <summary>From power-on to the last frame, seconds.</summary>
    public required double DurationS { get; init; }

    /// <summary>Coldest air of the night, °C: the cells are taken to be as cold. NaN: unknown.</summary>
    public required double ColdestC { get; init; }

    /// <summary>Heater, W; 0: none.</summary>
    public double HeaterW { get; init; }

    /// <summary>
    /// When it goes on, seconds after power-on, below 0 before it: a lens may need it as soon as it is out of the bag. It stays on to the
    /// end.
    /// </summary>
    public double HeaterFromS { get; init; }

    /// <summary>The heater's own battery, Wh; null: it hangs on the camera's.</summary>
    public double? HeaterBatteryWh { get; init; }
}
