using System.Collections.Frozen;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>The outcomes as commands, links and tables name them, and what each says about the call.</summary>
public static class OutcomeWords
{
    /// <summary>What a person can answer; a person who cannot say stayed at home.</summary>
    private static readonly NightOutcome[] Answers = [.. Enum.GetValues<NightOutcome>().Where(outcome => outcome != NightOutcome.NotTold)];

    private static readonly FrozenDictionary<string, NightOutcome> Outcomes = Answers.ToFrozenDictionary(Word);

    /// <summary>The word of every answer, in the order of the outcomes.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Answers.Select(Word)];

    /// <summary>"clear", "partly", "cloudy", "wet-lens", "stayed", "not-told".</summary>
    public static string Word(this NightOutcome outcome) => outcome switch
    {
        NightOutcome.Clear => "clear",
        NightOutcome.Partly => "partly",
        NightOutcome.Cloudy => "cloudy",
        NightOutcome.WetLens => "wet-lens",
        NightOutcome.Stayed => "stayed",
        NightOutcome.NotTold => "not-told",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Accepted: one of the outcomes."),
    };

    /// <summary>"debrief", "metar", "metar-auto", "analysis".</summary>
    public static string Word(this OutcomeSource source) => source switch
    {
        OutcomeSource.Debrief => "debrief",
        OutcomeSource.Metar => "metar",
        OutcomeSource.AutomaticMetar => "metar-auto",
        OutcomeSource.Analysis => "analysis",
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "Accepted: one of the sources."),
    };

    /// <summary>The answer of a word; null for any other.</summary>
    public static NightOutcome? Of(string? word) => word is not null && Outcomes.TryGetValue(word, out var outcome) ? outcome : null;

    /// <summary>
    /// The class that came, to hold a verdict against; null where nobody can say. A wet lens under a clear sky is a marginal night that
    /// came: dew is a caution with a remedy that the plan names, and no part of the probability.
    /// </summary>
    public static VerdictClass? Came(this NightOutcome outcome) => outcome switch
    {
        NightOutcome.Clear => VerdictClass.Go,
        NightOutcome.Partly or NightOutcome.WetLens => VerdictClass.Marginal,
        NightOutcome.Cloudy => VerdictClass.NoGo,
        _ => null,
    };
}
