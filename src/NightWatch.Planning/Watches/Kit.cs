namespace NightWatch.Planning.Watches;

/// <summary>Camera, lens and what feeds them. Defaults: a 36 × 24 mm sensor of 24 megapixels behind a 20 mm f/2 lens.</summary>
public sealed record Kit
{
    /// <summary>Sensor width, mm.</summary>
    public double SensorWidthMm { get; init; } = 36;

    /// <summary>Sensor height, mm.</summary>
    public double SensorHeightMm { get; init; } = 24;

    /// <summary>Pixel pitch, micrometres.</summary>
    public double PixelPitchUm { get; init; } = 5.9;

    /// <summary>Focal length, mm.</summary>
    public double FocalLengthMm { get; init; } = 20;

    /// <summary>Aperture number.</summary>
    public double FNumber { get; init; } = 2;

    /// <summary>ISO setting wanted; null: recommended by the plan.</summary>
    public int? Iso { get; init; }

    /// <summary>Size of one raw file, MB (10⁶ bytes).</summary>
    public double RawFileMb { get; init; } = 30;

    /// <summary>Sustained write speed of the card in the camera, MB/s.</summary>
    public double WriteMbPerS { get; init; } = 80;

    /// <summary>Room on the cards, GB (10⁹ bytes).</summary>
    public double CardGb { get; init; } = 128;

    /// <summary>Camera batteries or packs that feed camera and rail, watt-hours each, in the order of use.</summary>
    public IReadOnlyList<double> BatteriesWh { get; init; } = [14.4, 14.4];

    /// <summary>Mean draw of camera and rail while shooting, watts.</summary>
    public double CameraAndRailW { get; init; } = 4;

    /// <summary>Power of the dew heater, watts; 0 for none.</summary>
    public double DewHeaterW { get; init; }

    /// <summary>The heater's own battery, watt-hours; null: it hangs on the camera's.</summary>
    public double? DewHeaterBatteryWh { get; init; }

    /// <summary>Diameter of the front element, mm.</summary>
    public double FrontElementMm { get; init; } = 77;

    /// <summary>Mass of the front element and what is thermally tied to it, kg.</summary>
    public double FrontElementKg { get; init; } = 0.10;
}
