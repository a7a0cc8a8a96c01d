using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Words;

/// <summary>Verdicts and findings as the style sheets name them.</summary>
public static class VerdictStyle
{
    /// <summary>"go", "marginal", "nogo".</summary>
    public static string Of(VerdictClass verdict) => verdict switch
    {
        VerdictClass.Go => "go",
        VerdictClass.Marginal => "marginal",
        _ => "nogo",
    };

    /// <summary>"ok", "caution", "stop"; "unknown" where nothing is known and nothing hangs on it.</summary>
    public static string Of(Reason reason) => reason switch
    {
        { Severity: Severity.Stop } => "stop",
        { Severity: Severity.Caution } => "caution",
        { IsUnknown: true } => "unknown",
        _ => "ok",
    };
}
