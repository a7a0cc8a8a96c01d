namespace NightWatch.Planning.Dew;

/// <summary>Where the samples of a lens go, each as long as the night's.</summary>
public readonly ref struct LensSamples
{
    /// <summary>The unheated element, °C.</summary>
    public required Span<double> ElementC { get; init; }

    /// <summary>Its margin above the dew (frost) point, K; at 0 or below water or ice settles. NaN: unknown.</summary>
    public required Span<double> MarginsK { get; init; }

    /// <summary>The margin with the kit's heater on from the switch-on; empty: not wanted.</summary>
    public Span<double> HeatedMarginsK { get; init; }
}
