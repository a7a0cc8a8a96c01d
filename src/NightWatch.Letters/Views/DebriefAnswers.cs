using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>What a photographer can answer after a night, in the letters and on the pages.</summary>
/// <param name="Outcome">What it says.</param>
/// <param name="Text">In the photographer's words.</param>
public readonly record struct DebriefAnswer(NightOutcome Outcome, string Text);

/// <summary>The answers, in the order in which they are offered.</summary>
public static class DebriefAnswers
{
    private static readonly NightOutcome[] Offered =
        [NightOutcome.Clear, NightOutcome.Partly, NightOutcome.Cloudy, NightOutcome.WetLens, NightOutcome.Stayed];

    /// <summary>All, in a language.</summary>
    public static IReadOnlyList<DebriefAnswer> In(ILanguage language)
    {
        ArgumentNullException.ThrowIfNull(language);
        return [.. Offered.Select(outcome => new DebriefAnswer(outcome, language.Of(outcome)))];
    }
}
