using NightWatch.Planning.Power;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Dew;

/// <summary>Puts the element's night and the energy behind its heater together.</summary>
internal static class LensPlanner
{
    /// <param name="lens">The element through the night.</param>
    /// <param name="kit">The heater.</param>
    /// <param name="power">Energy; null: unknown.</param>
    public static LensPlan Plan(LensTrack lens, Kit kit, PowerPlan? power)
    {
        var hasHeater = kit.DewHeaterW > 0;
        var works = hasHeater && lens.HeaterOn is not null;
        var empty = HeaterEmpty(lens, kit, power);
        var own = power?.Budget.HeaterAvailableWh;
        return new LensPlan
        {
            Onset = lens.Onset,
            IsFrost = lens.Outcome.IsFrost,
            LeastMarginK = Known(lens.Outcome.LeastMarginK),
            HeaterNeededW = lens.Outcome.HeaterNeededW,
            HeaterOn = lens.HeaterOn,
            KitHeaterW = kit.DewHeaterW,
            HeatedLeastMarginK = hasHeater ? Known(lens.Outcome.HeatedLeastMarginK) : null,
            HeatedOnset = hasHeater ? lens.HeatedOnset : null,
            HeaterNeedWh = works ? power?.Budget.HeaterNeedWh : null,
            HeaterBatteryGivesWh = works && own is { } gives ? Known(gives) : null,
            HeaterEmpty = empty,
            HeaterSuffices = Suffices(lens, works, power, empty),
        };
    }

    /// <summary>
    /// When the energy behind the heater ends; where it hangs on the camera's packs, with them. Null: not before the last frame, or no
    /// need.
    /// </summary>
    public static Instant? HeaterEmpty(LensTrack lens, Kit kit, PowerPlan? power) => kit.DewHeaterW <= 0 || lens.HeaterOn is null
        ? null
        : power?.HeaterEmpty ?? (kit.DewHeaterBatteryWh is null ? power?.Empty : null);

    private static bool? Suffices(LensTrack lens, bool works, PowerPlan? power, Instant? empty)
    {
        if (!works) return null;
        if (lens.HeatedOnset is not null) return false;
        // A battery that ends before the last frame is only as good as no heater where dew comes.
        if (empty is not null) return lens.Onset is null;
        return power?.ColdestC is null ? null : true;
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
