using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>A second feed that says otherwise.</summary>
internal static class DisagreementJudge
{
    /// <summary>Its finding; null without a second feed, or where it does not know the cloud.</summary>
    public static Reason? Of(SecondOpinion? second, NightEvidence night, Run run)
    {
        if (second is null) return null;
        var main = RunMean.Of(night.Weather.Cloud, run);
        return new SecondForecast(
            second.Differs ? Severity.Caution : Severity.Ok,
            run.Span,
            second.Cloud,
            double.IsNaN(main) ? null : main,
            second.Usable,
            SecondOpinion.CloudApart)
        {
            Mend = second.Differs ? new Mend.Knowledge(Mend.Missing.Agreement) : null,
        };
    }
}
