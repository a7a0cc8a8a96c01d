using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Dew;

// What is found of dew and frost on the front element. The value is the least margin above the dew (frost) point, K.

/// <summary>Temperature, dew point, cloud or wind is not known for all of the run.</summary>
public sealed record DewNotKnown(Severity Severity, Interval? When)
    : Reason(Factor.Dew, Severity, When, null, 0, Unit.Kelvin, Sources.Formula.LensHeatBalance);

/// <summary>No dew comes: the bare element stays so far above its dew point, K.</summary>
public sealed record LensStaysDry(Interval? When, double MarginK, double BareMarginK)
    : Reason(Factor.Dew, Severity.Ok, When, MarginK, 0, Unit.Kelvin, Sources.Formula.LensHeatBalance);

/// <summary>Dew or frost settles, and the kit has no heater.</summary>
public sealed record DewOnBareLens(Interval? When, double MarginK, bool IsFrost, Instant Onset)
    : Reason(Factor.Dew, Severity.Caution, When, MarginK, 0, Unit.Kelvin, Sources.Formula.LensHeatBalance);

/// <summary>The kit's heater keeps dew or frost off.</summary>
public sealed record DewHeldOff(Interval? When, double MarginK, bool IsFrost, Instant Onset, double HeaterW)
    : Reason(Factor.Dew, Severity.Ok, When, MarginK, 0, Unit.Kelvin, Sources.Formula.LensHeatBalance);

/// <summary>The kit's heater keeps dew or frost off until the battery behind it is empty.</summary>
public sealed record DewAfterHeater(
    Severity Severity, Interval? When, double MarginK, bool IsFrost, Instant Onset, double HeaterW, Instant Empty)
    : Reason(Factor.Dew, Severity, When, MarginK, 0, Unit.Kelvin, Sources.Formula.LensHeatBalance)
{
    /// <summary>It has no battery of its own and ends with the camera's packs, whose shortness is a finding of its own.</summary>
    public bool IsOnPacks { get; init; }
}

/// <summary>The kit's heater is too weak against dew or frost from an instant on.</summary>
public sealed record DewThroughHeater(Interval? When, double MarginK, bool IsFrost, Instant Onset, double HeaterW, Instant Until)
    : Reason(Factor.Dew, Severity.Caution, When, MarginK, 0, Unit.Kelvin, Sources.Formula.LensHeatBalance);
