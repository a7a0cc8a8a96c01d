namespace NightWatch.Planning.Power;

/// <summary>What cold leaves of a lithium-ion cell.</summary>
public static class ColdCell
{
    /// <summary>Below this no lithium-ion cell should be relied on, °C: the lower end of usual cell specifications.</summary>
    public const double LeastDischargeC = -20;

    /// <summary>
    /// Below this no lithium-ion cell may be charged, °C: metal plates out (Jaguemont et al. 2016, Applied Energy 164, 99).
    /// </summary>
    public const double LeastChargeC = 0;

    /// <summary>Share of the rated energy at a cell temperature; 0 below −20 °C. NaN gives NaN.</summary>
    /// <remarks>
    /// Engineering choice within ±0.15, from battery handbooks' "half at −18 °C": 1.00 at 25, 0.95 at 10, 0.85 at 0, 0.70 at −10, 0.50
    /// at −20, straight lines between. The user's own measurement is better.
    /// </remarks>
    public static double ShareAt(double celsius) => celsius switch
    {
        >= 25 => 1,
        >= 10 => Line(celsius, 10, 0.95, 25, 1),
        >= 0 => Line(celsius, 0, 0.85, 10, 0.95),
        >= -10 => Line(celsius, -10, 0.70, 0, 0.85),
        >= LeastDischargeC => Line(celsius, -20, 0.50, -10, 0.70),
        < LeastDischargeC => 0,
        _ => double.NaN,
    };

    /// <summary>The cell may be charged at this temperature; unknown means no.</summary>
    public static bool MayBeCharged(double celsius) => celsius >= LeastChargeC;

    private static double Line(double x, double x0, double y0, double x1, double y1) => y0 + (y1 - y0) * (x - x0) / (x1 - x0);
}
