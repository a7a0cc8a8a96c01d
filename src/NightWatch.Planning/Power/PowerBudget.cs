namespace NightWatch.Planning.Power;

/// <summary>Energy needed and energy there, with the times to change packs.</summary>
public sealed record PowerBudget
{
    /// <summary>Share of the stored energy that reaches the load. Engineering choice: converters give 0.85 to 0.9.</summary>
    public const double ConverterShare = 0.87;

    /// <summary>Share of the label that an aged pack, not run flat, gives. Engineering choice.</summary>
    public const double UsableShare = 0.9;

    /// <summary>Reserve that should be left, as a share of the need. Engineering choice.</summary>
    public const double WishedReserve = 0.25;

    /// <summary>Energy the camera's packs must give, Wh at the cells.</summary>
    public required double NeedWh { get; init; }

    /// <summary>Energy they can give in this cold, Wh; NaN: the cold is unknown.</summary>
    public required double AvailableWh { get; init; }

    /// <summary>What is left over as a share of the need; below 0 it does not last. NaN: unknown.</summary>
    public double Reserve => AvailableWh / NeedWh - 1;

    /// <summary>It lasts with the wished reserve; false when unknown.</summary>
    public bool IsEnough => Reserve >= WishedReserve;

    /// <summary>When to change packs, seconds after power-on, each before the one in use is empty.</summary>
    public required IReadOnlyList<double> SwapsS { get; init; }

    /// <summary>When the last pack is empty, seconds after power-on; null: after the end, or unknown.</summary>
    public required double? EmptyS { get; init; }

    /// <summary>When the heater's own battery is empty, seconds after power-on; null: after the end, none, or unknown.</summary>
    public required double? HeaterEmptyS { get; init; }

    /// <summary>Energy the heater takes from its switch-on, Wh at the cells; 0: no heater.</summary>
    public double HeaterNeedWh { get; init; }

    /// <summary>
    /// Energy the heater's own battery can give in this cold, Wh; null: it hangs on the camera's, NaN: the cold is unknown.
    /// </summary>
    public double? HeaterAvailableWh { get; init; }

    /// <summary>Works out a night.</summary>
    public static PowerBudget Of(PowerNeed need)
    {
        var usable = UsableShare * ColdCell.ShareAt(need.ColdestC);
        var heaterHere = need.HeaterBatteryWh is null ? need.HeaterW : 0;
        var before = need.CameraAndRailW / ConverterShare;
        var after = (need.CameraAndRailW + heaterHere) / ConverterShare;
        var heaterStart = Math.Min(need.HeaterFromS, need.DurationS);
        var heaterFrom = Math.Max(0, heaterStart);
        var beforePowerOnWh = heaterHere / ConverterShare * (heaterFrom - heaterStart) / 3600;

        var swaps = new List<double>();
        double? empty = null;
        var given = -beforePowerOnWh;
        if (usable == 0 && need.DurationS > 0) empty = 0; // too cold: no pack to change to either
        for (var i = 0; i < need.BatteriesWh.Count && empty is null; i++)
        {
            given += need.BatteriesWh[i] * usable;
            var until = SecondsFor(Math.Max(0, given), before, after, heaterFrom);
            if (!(until < need.DurationS)) break;
            if (i + 1 < need.BatteriesWh.Count) swaps.Add(until);
            else empty = until;
        }

        return new PowerBudget
        {
            NeedWh = beforePowerOnWh + (before * heaterFrom + after * (need.DurationS - heaterFrom)) / 3600,
            AvailableWh = need.BatteriesWh.Sum() * usable,
            SwapsS = swaps,
            EmptyS = need.BatteriesWh.Count == 0 ? 0 : empty,
            HeaterEmptyS = HeaterEmpty(need, usable, heaterStart),
            HeaterNeedWh = need.HeaterW / ConverterShare * (need.DurationS - heaterStart) / 3600,
            HeaterAvailableWh = need.HeaterBatteryWh * usable,
        };
    }

    private static double SecondsFor(double wattHours, double before, double after, double changeS)
    {
        var joules = wattHours * 3600;
        return joules <= before * changeS ? joules / before : changeS + (joules - before * changeS) / after;
    }

    private static double? HeaterEmpty(PowerNeed need, double usable, double heaterFrom)
    {
        if (need.HeaterBatteryWh is not { } own || need.HeaterW <= 0) return null;
        var until = heaterFrom + own * usable * ConverterShare * 3600 / need.HeaterW;
        return until < need.DurationS ? until : null;
    }
}
