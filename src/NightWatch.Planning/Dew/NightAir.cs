namespace NightWatch.Planning.Dew;

/// <summary>The air around a lens through a night, at equal steps. NaN is unknown.</summary>
public readonly ref struct NightAir
{
    /// <summary>The air.</summary>
    /// <param name="stepS">Seconds between samples, above 0.</param>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="dewPointC">Dew point, °C.</param>
    /// <param name="cloud">Cloud cover as it counts for radiation, fraction.</param>
    /// <param name="windMps">Wind at 10 m, m/s.</param>
    /// <exception cref="ArgumentException">The spans differ in length, or the step is not above 0.</exception>
    public NightAir(
        double stepS, ReadOnlySpan<double> airC, ReadOnlySpan<double> dewPointC, ReadOnlySpan<double> cloud, ReadOnlySpan<double> windMps)
    {
        if (!(stepS > 0)) throw new ArgumentException("The step must be above 0 seconds.", nameof(stepS));
        if (dewPointC.Length != airC.Length || cloud.Length != airC.Length || windMps.Length != airC.Length)
            throw new ArgumentException("All series of the night must have one length.", nameof(airC));
        StepS = stepS;
        AirC = airC;
        DewPointC = dewPointC;
        Cloud = cloud;
        WindMps = windMps;
    }

    /// <summary>Seconds between samples.</summary>
    public double StepS { get; }

    /// <summary>Air temperature, °C.</summary>
    public ReadOnlySpan<double> AirC { get; }

    /// <summary>Dew point, °C.</summary>
    public ReadOnlySpan<double> DewPointC { get; }

    /// <summary>Cloud cover as it counts for radiation, fraction.</summary>
    public ReadOnlySpan<double> Cloud { get; }

    /// <summary>Wind at 10 m, m/s.</summary>
    public ReadOnlySpan<double> WindMps { get; }

    /// <summary>How many samples there are.</summary>
    public int Count => AirC.Length;
}
