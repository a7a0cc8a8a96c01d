using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Length of the run.</summary>
internal sealed class LengthFactor : FactorRule
{
    public override Factor Factor => Factor.Length;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var run = plan.Run.Span;
        var least = Duration.FromMinutes(night.Limits.UsableRunMin);
        var severity = run.Duration >= least ? Severity.Ok : Severity.Stop;
        return new Reason.RunLength(severity, run, night.Limits.UsableRunMin) { Mend = severity == Severity.Ok ? null : new Mend.ShorterRun() };
    }
}
