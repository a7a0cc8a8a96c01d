using System.Globalization;
using NightWatch.Planning.Judging;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;

namespace NightWatch.Words;

/// <summary>Verdicts, factors and severities in words.</summary>
public static class VerdictWords
{
    /// <summary>"GO", "MARGINAL", "NO-GO".</summary>
    public static string Of(VerdictClass verdict) => verdict switch
    {
        VerdictClass.Go => "GO",
        VerdictClass.Marginal => "MARGINAL",
        _ => "NO-GO",
    };

    /// <summary>"go", "marginal", "nogo": the word of the style sheets.</summary>
    public static string StyleOf(VerdictClass verdict) => verdict switch
    {
        VerdictClass.Go => "go",
        VerdictClass.Marginal => "marginal",
        _ => "nogo",
    };

    /// <summary>"82 %".</summary>
    public static string Chance(double value) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * value):0} %");

    /// <summary>"82 % likely to be usable: 4 runs of the forecast agree or not, weighed".</summary>
    public static string Chance(Probability probability)
    {
        var basis = probability.Basis switch
        {
            ProbabilityBasis.EnsembleMembers => $"from {probability.Count} ensemble members",
            ProbabilityBasis.LaggedRuns => $"from the last {probability.Count} forecast runs",
            ProbabilityBasis.LeadTimePrior => "from the usual skill of cloud forecasts this far ahead",
            _ => "from the sky alone",
        };
        return $"{Chance(probability.Value)} likely to be usable ({basis})";
    }

    /// <summary>A factor as a heading.</summary>
    public static string Of(Factor factor) => factor switch
    {
        Factor.RainProbability => "Chance of rain",
        Factor.Length => "Length of the window",
        Factor.Dew => "Dew on the lens",
        Factor.Glow => "Site and towns",
        Factor.Frame => "Subject in the frame",
        Factor.SkyLevel => "Sky in the frame",
        Factor.Power => "Batteries",
        Factor.Storage => "Cards",
        Factor.Disagreement => "Second forecast",
        Factor.Forecast => "Forecast itself",
        _ => factor.ToString(),
    };

    /// <summary>"ok", "caution", "stop".</summary>
    public static string Of(Severity severity) => severity switch
    {
        Severity.Ok => "ok",
        Severity.Caution => "caution",
        _ => "stop",
    };
}
