using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>A figure as it was told, so that a later letter can say "cloud 12 % then, 68 % now".</summary>
/// <param name="Factor">What about.</param>
/// <param name="Severity">How bad it was then.</param>
/// <param name="Value">The figure; null: it was unknown.</param>
/// <param name="Unit">Of the figure.</param>
public sealed record ToldFigure(Factor Factor, Severity Severity, double? Value, Unit Unit)
{
    /// <summary>
    /// The hours it was taken over, which are those it is held against later; null: of no hours, or kept before they were.
    /// </summary>
    public Interval? Over { get; init; }
}
