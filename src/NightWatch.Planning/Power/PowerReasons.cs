using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Power;

// What is found of the batteries: what they give in the cold, and what the sequence needs, Wh at the cells.

/// <summary>The cold that the packs work in is not known.</summary>
public sealed record PacksInUnknownCold(double NeedWh)
    : Reason(Factor.Power, Severity.Ok, null, null, NeedWh, Unit.WattHours, Sources.Formula.BatteryEnergy);

/// <summary>Colder than packs may be relied on, °C.</summary>
public sealed record PacksTooCold(double ColdestC, double LeastC, double AvailableWh, double NeedWh)
    : Reason(Factor.Power, Severity.Caution, null, 0, NeedWh, Unit.WattHours, Sources.Formula.BatteryEnergy);

/// <summary>The last pack is empty before the last frame.</summary>
public sealed record PacksRunOut(Severity Severity, Interval? When, Instant Empty, double ColdestC, double AvailableWh, double NeedWh)
    : Reason(Factor.Power, Severity, When, AvailableWh, NeedWh, Unit.WattHours, Sources.Formula.BatteryEnergy);

/// <summary>The packs last, with the wished reserve (a share of the need) or without it.</summary>
public sealed record PacksLast(double ColdestC, double AvailableWh, double NeedWh, bool HasReserve)
    : Reason(Factor.Power, Severity.Ok, null, AvailableWh, NeedWh, Unit.WattHours, Sources.Formula.BatteryEnergy);
