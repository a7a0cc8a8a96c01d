using NodaTime;

namespace NightWatch.Planning.Reasons;

/// <summary>
/// A reason of a verdict of an earlier release, as it was said then in English and metric units: words without figures behind them, read
/// from the store, never made.
/// </summary>
/// <param name="Factor">What it is about.</param>
/// <param name="Severity">How bad it was.</param>
/// <param name="When">The stretch it held for.</param>
/// <param name="Value">The figure.</param>
/// <param name="Limit">Its limit.</param>
/// <param name="Unit">Unit of the figure and of its limit.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Fix">What would have helped.</param>
/// <param name="Source">Where the figure came from.</param>
public sealed record Recorded(
    Factor Factor, Severity Severity, Interval? When, double? Value, double? Limit, Unit Unit, string Text,
    string? Fix = null, string? Source = null)
    : Reason(Factor, Severity, When, Value, Limit, Unit, null);
