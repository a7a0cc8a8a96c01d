using NightWatch.Planning.Judging;

namespace NightWatch.Planning.Verdicts;

/// <summary>A second feed that says otherwise.</summary>
internal sealed class DisagreementFactor : FactorRule
{
    public override Factor Factor => Factor.Disagreement;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (SecondOpinion.Of(night, plan.Run) is not { } second) return null;
        var main = new MeanScale(night.Weather.Cloud, night.Limits.Cloud).Mean(plan.Run.First, plan.Run.Last);
        return new Reason.SecondForecast(
            second.Differs ? Severity.Caution : Severity.Ok, plan.Run.Span, second.Cloud, double.IsNaN(main) ? null : main, second.Usable, SecondOpinion.CloudApart)
        {
            Mend = second.Differs ? new Mend.Knowledge(Mend.Missing.Agreement) : null,
        };
    }
}
