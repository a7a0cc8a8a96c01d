using NightWatch.Planning.Verification.Outcomes;

namespace NightWatch.Letters.Views;

/// <summary>What a photographer can answer after a night, in the letters and on the pages.</summary>
/// <param name="Outcome">What it says.</param>
/// <param name="Text">In the photographer's words.</param>
public readonly record struct DebriefAnswer(NightOutcome Outcome, string Text);

/// <summary>The answers, in the order in which they are offered.</summary>
public static class DebriefAnswers
{
    /// <summary>All.</summary>
    public static IReadOnlyList<DebriefAnswer> All { get; } =
    [
        new(NightOutcome.Clear, "Clear: I got what I came for"),
        new(NightOutcome.Partly, "Partly: some of it was usable"),
        new(NightOutcome.Cloudy, "Cloud, fog or rain: nothing usable"),
        new(NightOutcome.WetLens, "Clear, but the lens got wet"),
        new(NightOutcome.Stayed, "I could not go"),
    ];
}
