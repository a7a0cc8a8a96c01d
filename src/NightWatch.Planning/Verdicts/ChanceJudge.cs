using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Verdicts;

/// <summary>The chance against the reader's own trade-off.</summary>
internal static class ChanceJudge
{
    /// <summary>Its finding; none where the sky alone decides, or the night has come: nothing is left to chance then.</summary>
    public static IEnumerable<Reason> Of(Probability chance, TradeOff tradeOff, VerdictClass said)
    {
        if (chance.Basis is ProbabilityBasis.SkyAlone or ProbabilityBasis.Came) yield break;
        var byChance = tradeOff.Of(chance.Value, lastTold: null);
        var severity = (said, byChance) switch
        {
            (VerdictClass.Go, _) => Severity.Ok,
            (VerdictClass.NoGo, VerdictClass.NoGo) => Severity.Stop,
            (_, VerdictClass.Go) => Severity.Ok,
            _ => Severity.Caution,
        };
        yield return new UsableNight(severity, chance.Value, tradeOff.PaysFrom, tradeOff.GoFrom);
    }
}
