using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;

namespace NightWatch.Words;

/// <summary>The trade's words for what the planner calls by a name.</summary>
public static class TradeWords
{
    /// <summary>"no-go".</summary>
    public static string Of(VerdictClass verdict) =>
        verdict switch
        {
            VerdictClass.Go => "go",
            VerdictClass.Marginal => "marginal",
            _ => "no-go",
        };

    /// <summary>"caution".</summary>
    public static string Of(Severity severity) => severity switch { Severity.Stop => "stop", Severity.Caution => "caution", _ => "ok" };

    /// <summary>What a probability rests on: "usual skill at this lead time".</summary>
    public static string Of(Probability chance) => chance.Basis switch
    {
        ProbabilityBasis.EnsembleMembers => $"a model over {chance.Count} runs of the ensemble",
        ProbabilityBasis.LaggedRuns => $"a model over {chance.Count} runs",
        ProbabilityBasis.LeadTimePrior => "a model over the newest run",
        ProbabilityBasis.Came => "the hours that came",
        _ => "the sky alone decides",
    };

    /// <summary>"RainProbability" to "rain probability".</summary>
    public static string Of(Factor factor) => Spaced(factor);

    /// <summary>The words of any name: "RainProbability" to "rain probability".</summary>
    public static string Spaced(Enum name) =>
        string.Concat(
            name.ToString()
                .Select(
                    (letter, i) =>
                        i > 0 && char.IsUpper(letter) ? " " + char.ToLowerInvariant(letter) : char.ToLowerInvariant(letter).ToString()));
}
