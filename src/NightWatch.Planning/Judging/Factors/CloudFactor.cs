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
            return new Reason.CloudNotKnown(severity, run.Span, limit.Caution) { Mend = new Mend.Knowledge(Mend.Missing.Cloud) };

        var most = run.First;
        var unknown = 0;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (double.IsNaN(night.Weather.Cloud[cell])) unknown++;
            else if (!(night.Weather.Cloud[cell] <= night.Weather.Cloud[most])) most = cell;
        }

        return new Reason.CloudMean(severity, run.Span, mean, night.Weather.Cloud[most], night.Grid.At(most), limit, (double)unknown / run.Count)
        {
            Mend = MendOf(night, severity, limit),
        };
    }

    private static Mend? MendOf(NightEvidence night, Severity severity, Threshold limit) => severity switch
    {
        Severity.Caution => new Mend.CloudAtMost(limit.Caution, night.Limits.UsableRunMin),
        Severity.Stop => new Mend.CloudBelow(limit.Stop, night.Limits.UsableRunMin),
        _ => null,
    };
}
