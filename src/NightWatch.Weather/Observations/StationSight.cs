namespace NightWatch.Weather.Observations;

/// <summary>How much of the sky stood behind one aerodrome report.</summary>
/// <remarks>
/// Federal Meteorological Handbook No. 1, 9.4.1: automated stations evaluate the sky from the surface to at least 12,000 feet, observers
/// all cloud that they see. A report without the mark of an automatic one is still an instrument's where nobody looked up, so it has to
/// show that somebody did. ICAO Annex 3, 4.5: CAVOK and NSC speak of nothing above 1500 m (5000 ft).
/// </remarks>
/// <param name="IsAutomatic">Nobody looked (the report says AUTO).</param>
/// <param name="BlindAboveM">Above so many metres over the station there may be cloud that it does not tell; null: somebody saw it
/// all.</param>
public readonly record struct StationSight(bool IsAutomatic, double? BlindAboveM)
{
    private const double MetresPerFoot = 0.3048;

    /// <summary>Layers to 12,000 feet are rounded to this at most, so one that is higher was seen by eye.</summary>
    private const double CeilometerFeet = 12_500;

    private const double OperationalFeet = 5000;

    /// <summary>The sight behind a report.</summary>
    /// <param name="isAutomatic">The report says AUTO.</param>
    /// <param name="codes">Of its cloud groups.</param>
    /// <param name="highestBaseFeet">Base of the highest group, feet over the station; null: no group has one.</param>
    /// <param name="isInStatuteMiles">It gives visibility in statute miles: North American practice, which tells every layer that is
    /// seen.</param>
    public static StationSight Of(bool isAutomatic, IReadOnlyCollection<string> codes, double? highestBaseFeet, bool isInStatuteMiles)
    {
        ArgumentNullException.ThrowIfNull(codes);
        if (isAutomatic) return Below(isAutomatic: true, CeilometerFeet);
        if (Has("SKC") || highestBaseFeet >= CeilometerFeet) return new StationSight(false, null);
        return Below(isAutomatic: false, isInStatuteMiles || Has("CLR") || Has("NCD") ? CeilometerFeet : OperationalFeet);

        bool Has(string code) => codes.Contains(code, StringComparer.OrdinalIgnoreCase);
    }

    private static StationSight Below(bool isAutomatic, double feet) => new(isAutomatic, feet * MetresPerFoot);
}
