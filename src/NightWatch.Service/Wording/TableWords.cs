using NightWatch.Alerts.Policy;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Service.Wording;

/// <summary>The trade's words for what the planner calls by a name.</summary>
internal static class TableWords
{
    public static string Of(VerdictClass verdict) => verdict switch { VerdictClass.Go => "go", VerdictClass.Marginal => "marginal", _ => "no-go" };

    public static string Of(Severity severity) => severity switch { Severity.Stop => "stop", Severity.Caution => "caution", _ => "ok" };

    public static string Of(Probability chance) => chance.Basis switch
    {
        ProbabilityBasis.EnsembleMembers => $"share of {chance.Count} ensemble members",
        ProbabilityBasis.LaggedRuns => $"agreement of {chance.Count} runs",
        ProbabilityBasis.LeadTimePrior => "usual skill at this lead time",
        _ => "the sky alone decides",
    };

    public static string Of(LetterKind kind) => Spaced(kind.ToString());

    /// <summary>"RainProbability" to "rain probability".</summary>
    public static string Of(Factor factor) => Spaced(factor.ToString());

    private static string Spaced(string name) =>
        string.Concat(name.Select((letter, i) => i > 0 && char.IsUpper(letter) ? " " + char.ToLowerInvariant(letter) : char.ToLowerInvariant(letter).ToString()));
}
