using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>A second feed that says otherwise.</summary>
internal static class DisagreementJudge
{
    /// <summary>Its finding; null without a second feed, or where it does not know the cloud.</summary>
    public static Reason? Of(NightEvidence night, Run run)
    {
        if (SecondOpinion.Of(night, run) is not { } second) return null;
        var main = CloudJudge.Scale(night.Weather, night.Limits).Mean(run.First, run.Last);
        return new SecondForecast(
            second.Differs ? Severity.Caution : Severity.Ok, run.Span, second.Cloud, double.IsNaN(main) ? null : main, second.Usable, SecondOpinion.CloudApart)
        {
            Mend = second.Differs ? new Mend.Knowledge(Mend.Missing.Agreement) : null,
        };
    }
}
