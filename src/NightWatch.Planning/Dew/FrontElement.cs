namespace NightWatch.Planning.Dew;

/// <summary>What of a lens decides how it cools.</summary>
/// <param name="DiameterMm">Of the front element, mm.</param>
/// <param name="MassKg">Of the element and what is thermally tied to it, kg.</param>
public readonly record struct FrontElement(double DiameterMm, double MassKg)
{
    /// <summary>Share of what the element faces that is sky: 0.5 aimed at the horizon, 1 at the zenith, less behind a hood.</summary>
    public double SkyView { get; init; } = 0.5;

    /// <summary>Wind at the element as a share of the forecast's 10 m wind. Engineering choice: 0.5 to 0.7 at tripod height.</summary>
    public double WindShare { get; init; } = 0.6;

    /// <summary>Share of the heater's power that reaches the glass. Engineering choice: a strap on the barrel couples 0.1 to 0.3.</summary>
    public double HeaterCoupling { get; init; } = 0.2;

    /// <summary>Area that radiates, m².</summary>
    public double AreaM2 => Math.PI / 4 * DiameterMm * DiameterMm * 1e-6;

    /// <summary>Heat capacity, J/K; 840 J/(kg K), in the range that glass has (750 to 840).</summary>
    public double HeatCapacityJPerK => 840 * MassKg;

    /// <summary>Share of sky a bare lens faces when its axis points at an altitude, 0.5 at the horizon to 1 at the zenith.</summary>
    /// <param name="axisAltitudeDeg">Altitude of the optical axis, degrees; below 0 counts as 0.</param>
    /// <remarks>View factor of a tilted plane to the upper hemisphere, (1 + sin altitude) / 2.</remarks>
    public static double SkyViewAt(double axisAltitudeDeg) =>
        (1 + Math.Sin(Math.Clamp(axisAltitudeDeg, 0, 90) * Math.PI / 180)) / 2;
}
