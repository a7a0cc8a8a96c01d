using NightWatch.Planning.Grid;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Ground;

/// <summary>Water left on and in the top of the ground, by the hour.</summary>
/// <remarks>
/// A store that fills with rain, drains what it cannot hold and dries by FAO-56's grass or Penman's film. Its long-wave loss is taken
/// at a humidity of 60 % whatever the air holds (engineering choice): a damp night sky warms, and must not count as drying. Dew on the
/// ground is not added. A film at sunset stays till morning: without sun there is next to no evaporation.
/// </remarks>
public static class GroundWater
{
    private const double ReferenceHumidity = 0.6;
    private const double AntecedentHours = 72;

    /// <summary>Follows the store.</summary>
    /// <param name="kind">What one stands on.</param>
    /// <param name="antecedentMm">Rain of the 72 hours before the first sample, mm, taken as evenly spread; NaN: unknown.</param>
    /// <param name="weather">The series.</param>
    /// <param name="elevationM">Of the site.</param>
    /// <param name="storeMm">Out: water at each sample, mm; NaN where rain before it is unknown.</param>
    /// <remarks>
    /// Unknown air, humidity, wind or cloud dry nothing. An unknown start becomes known once the ground is as full as it gets.
    /// </remarks>
    /// <exception cref="ArgumentException">The series differ in length.</exception>
    public static void Follow(GroundKind kind, double antecedentMm, in GroundWeather weather, double elevationM, Span<double> storeMm)
    {
        var count = weather.RainMmPerH.Length;
        if (weather.AirC.Length != count || weather.DewPointC.Length != count || weather.WindMps.Length != count
            || weather.Cloud.Length != count || weather.SunAltitudeDeg.Length != count || storeMm.Length != count)
        {
            throw new ArgumentException("All series of the ground's weather must have one length.", nameof(weather));
        }

        var traits = GroundTraits.Of(kind);
        var hours = weather.StepS / 3600;
        var store = AtStart(traits, antecedentMm);
        for (var i = 0; i < count; i++)
        {
            storeMm[i] = store;
            if (double.IsNaN(weather.RainMmPerH[i]))
            {
                store = double.NaN;
                continue;
            }

            var rain = weather.RainMmPerH[i] * hours;
            if (double.IsNaN(store)) store = rain >= traits.CapacityMm ? traits.CapacityMm : double.NaN;
            else
                store = Drained(
                    traits, Dried(traits, Math.Min(traits.CapacityMm, store + rain), Drying(kind, weather, i, elevationM) * hours), hours);
        }
    }

    /// <summary>The word for an amount of water on a kind of ground.</summary>
    public static GroundState StateOf(GroundKind kind, double storeMm)
    {
        var traits = GroundTraits.Of(kind);
        return double.IsNaN(storeMm) ? GroundState.Unknown
            : storeMm >= traits.WetMm ? GroundState.Wet
            : storeMm >= traits.DampMm ? GroundState.Damp
            : GroundState.Dry;
    }

    /// <summary>Seconds after the first sample from which the ground is no longer damp; null: not in the series.</summary>
    /// <param name="kind">What one stands on.</param>
    /// <param name="storeMm">The series of <see cref="Follow"/>.</param>
    /// <param name="stepS">Seconds between samples.</param>
    /// <param name="from">First sample looked at: arrival, or the start.</param>
    public static double? DryFromS(GroundKind kind, ReadOnlySpan<double> storeMm, double stepS, int from = 0) =>
        Crossing.FirstAtOrBelow(storeMm, GroundTraits.Of(kind).DampMm * (1 - 1e-9), stepS, from);

    // Kohler and Linsley 1951, US Weather Bureau Research Paper 34: what is left of each hour's rain falls by the daily share.
    internal static double AtStart(in GroundTraits traits, double antecedentMm)
    {
        var hourly = -Math.Log(traits.DailyShare) / 24;
        var left = antecedentMm * (1 - Math.Exp(-hourly * AntecedentHours)) / (hourly * AntecedentHours);
        return double.IsNaN(left) ? double.NaN : Math.Min(traits.HeldMm, left);
    }

    // Full rate while half of the held water is there, then in proportion to what is left.
    internal static double Dried(in GroundTraits traits, double store, double potentialMm)
    {
        if (!(potentialMm > 0)) return store;
        var knee = traits.HeldMm / 2;
        if (store - potentialMm >= knee) return store - potentialMm;
        var atFullRate = Math.Max(0, store - knee);
        return Math.Min(store, knee) * Math.Exp(-(potentialMm - atFullRate) / knee);
    }

    private static double Drained(in GroundTraits traits, double store, double hours) =>
        store <= traits.HeldMm ? store : traits.HeldMm + (store - traits.HeldMm) * Math.Exp(-hours / traits.DrainHours);

    private static double Drying(GroundKind kind, in GroundWeather weather, int i, double elevationM)
    {
        var airC = weather.AirC[i];
        var vapour = FaoAir.SaturationKPa(Math.Min(weather.DewPointC[i], airC));
        var wind = FaoAir.WindAt2M(Math.Max(0, weather.WindMps[i]), 10);
        var sunshine = 1 - Math.Clamp(weather.Cloud[i], 0, 1); // FAO-56 speaks of sunshine; cloud cover is its usual stand-in
        var solar = Radiation.Solar(Radiation.Extraterrestrial(weather.SunAltitudeDeg[i]), sunshine);
        var clearness = (0.25 + 0.5 * sunshine) / 0.75;
        var net = Radiation.Net(solar, Radiation.NetLongWave(airC, ReferenceHumidity * FaoAir.SaturationKPa(airC), clearness));
        var intoGround = net > 0 ? 0.1 * net : 0.5 * net; // FAO-56, eq. 45 and 46
        return kind == GroundKind.Grass
            ? Evaporation.GrassMmPerHour(airC, vapour, wind, net - intoGround, elevationM)
            : Evaporation.FilmMmPerHour(airC, vapour, wind, net - intoGround, elevationM);
    }
}
