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
        var apart = double.IsNaN(main) ? (double?)null : Math.Abs(main - second.Cloud);
        var verdict = second.Usable ? "finds a usable run" : "finds no usable run";
        var figures = double.IsNaN(main)
            ? $"The second feed has {Said.Percent(second.Cloud)} cloud in the run"
            : $"The second feed has {Said.Percent(second.Cloud)} cloud in the run where the first has {Said.Percent(main)}";
        return new Reason(
            Factor, second.Differs ? Severity.Caution : Severity.Ok, plan.Run.Span, apart, SecondOpinion.CloudApart, Unit.Fraction,
            $"{figures}; on its own it {verdict}.", second.Differs ? "Two feeds that agree." : null);
    }
}
