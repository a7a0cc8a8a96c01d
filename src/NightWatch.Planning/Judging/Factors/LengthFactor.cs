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
        var text = severity == Severity.Ok
            ? $"Dark with the subject up for {Said.Length(run.Duration)}, {Said.Span(run, night.Zone)}; at least {Said.Length(least)} are needed."
            : $"Dark with the subject up for only {Said.Length(run.Duration)}, {Said.Span(run, night.Zone)}; {Said.Length(least)} are needed.";
        return new Reason(
            Factor, severity, run, run.Duration.TotalMinutes, night.Limits.UsableRunMin, Unit.Minutes, text,
            severity == Severity.Ok ? null : $"A shorter run accepted, or a date on which the subject is up longer in the dark.");
    }
}
