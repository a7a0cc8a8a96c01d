using NightWatch.Planning.Sources;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Reasons;

/// <summary>One factor's finding over a night: its figures in units, and no words. Closed: no case stands outside this project.</summary>
/// <remarks>
/// Each case stands in the folder of the idea that finds it, beside the judge that finds it (dew's in Dew); here is what they share.
/// A case names what was found and carries the figures behind it; sentences are made of them at the very end, in the reader's language
/// and units. What every case has in common stands here: a factor's share in the worth of a moment would be one member more.
/// </remarks>
public abstract record Reason
{
    private protected Reason(Factor factor, Severity severity, Interval? when, double? value, double? limit, Unit unit, Formula? formula)
    {
        (Factor, Severity, When) = (factor, severity, when);
        (Value, Limit, Unit) = (value, limit, unit);
        Formula = formula;
    }

    /// <summary>What it is about.</summary>
    public Factor Factor { get; }

    /// <summary>How bad it is by the watch's limits.</summary>
    public Severity Severity { get; init; }

    /// <summary>The stretch of the night it is true for; null: all of it.</summary>
    public Interval? When { get; }

    /// <summary>The one figure that was judged; null: unknown.</summary>
    public virtual double? Value { get; }

    /// <summary>What it was held against; null where there is none.</summary>
    public double? Limit { get; }

    /// <summary>Unit of the figure and of its limit.</summary>
    public Unit Unit { get; }

    /// <summary>Formula or convention behind the figures; null only where the case says it otherwise.</summary>
    public Formula? Formula { get; }

    /// <summary>What would make it ok; null if nothing would, or nothing need.</summary>
    public Mend? Mend { get; init; }

    /// <summary>The figure is not known.</summary>
    public bool IsUnknown => Value is null;

    /// <summary>Can hurt people; stands first.</summary>
    public bool IsHazard => Factor is Factor.Thunder or Factor.Hazard && Severity > Severity.Ok;

    /// <summary>The limit that was passed, or the first one where none was.</summary>
    private protected static double Held(Severity severity, Threshold limits) => severity == Severity.Stop ? limits.Stop : limits.Caution;
}
