using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Mean total cloud over the run. Single hours are beyond any forecast's skill; the mean of a window is not.</summary>
internal sealed class CloudFactor : FactorRule
{
    public override Factor Factor => Factor.Cloud;

    public override RunScale Scale(NightEvidence night) => new MeanScale(night.Weather.Cloud, night.Limits.Cloud);

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var run = plan.Run;
        var scale = new MeanScale(night.Weather.Cloud, night.Limits.Cloud);
        var severity = scale.Over(run.First, run.Last);
        var mean = scale.Mean(run.First, run.Last);
        var limit = night.Limits.Cloud;
        if (double.IsNaN(mean))
        {
            return new Reason(
                Factor, severity, run.Span, null, limit.Caution, Unit.Fraction, "Cloud is not known for the hours of the run.",
                "A forecast that covers the night, with little cloud in it.");
        }

        var most = run.First;
        var unknown = 0;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (double.IsNaN(night.Weather.Cloud[cell])) unknown++;
            else if (!(night.Weather.Cloud[cell] <= night.Weather.Cloud[most])) most = cell;
        }

        var text = $"Cloud averages {Said.Percent(mean)} {Said.Span(run.Span, night.Zone)}, at most {Said.Percent(night.Weather.Cloud[most])} "
            + $"at {Said.Clock(night.Grid.At(most), night.Zone)}; a go up to {Said.Percent(limit.Caution)}, a no-go from {Said.Percent(limit.Stop)}.";
        if (unknown > 0)
            text += $" It is not known for {Said.Percent((double)unknown / run.Count)} of the run.";
        return new Reason(
            Factor, severity, run.Span, mean, severity == Severity.Stop ? limit.Stop : limit.Caution, Unit.Fraction, text, Fix(night, severity, limit));
    }

    private static string? Fix(NightEvidence night, Severity severity, Threshold limit) => severity switch
    {
        Severity.Caution => $"A mean of {Said.Percent(limit.Caution)} or less over {Said.Number(night.Limits.UsableRunMin)} min, known for all of it.",
        Severity.Stop => $"Clearer: a mean below {Said.Percent(limit.Stop)} for at least {Said.Number(night.Limits.UsableRunMin)} min.",
        _ => null,
    };
}
