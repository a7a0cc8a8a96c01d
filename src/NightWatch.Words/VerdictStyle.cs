using NightWatch.Planning.Verdicts;

namespace NightWatch.Words;

/// <summary>Verdicts as the style sheets name them.</summary>
public static class VerdictStyle
{
    /// <summary>"go", "marginal", "nogo".</summary>
    public static string Of(VerdictClass verdict) => verdict switch
    {
        VerdictClass.Go => "go",
        VerdictClass.Marginal => "marginal",
        _ => "nogo",
    };
}
