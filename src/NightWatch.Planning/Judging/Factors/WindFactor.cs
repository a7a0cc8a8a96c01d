using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Gusts: they shake the rail between frames and throw tripods.</summary>
/// <remarks>
/// Where the feed gives no gusts they are taken from its mean wind: 1.66 times, the 3-second gust over 10 minutes for in-land terrain
/// (Harper, Kepert and Ginger 2010, WMO/TD-No. 1555; figure from memory). Such an estimate is a caution at most, except where the mean
/// wind alone passes the no-go limit.
/// </remarks>
internal sealed class WindFactor : WorstCellFactor
{
    private const double InlandGustFactor = 1.66;

    public override Factor Factor => Factor.Wind;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Weather.GustMps;

    protected override Threshold Limit(NightEvidence night) => night.Limits.GustMps;

    protected override Severity UnknownAt(NightEvidence night, int cell)
    {
        var wind = night.Weather.WindMps[cell];
        return wind >= night.Limits.GustMps.Stop ? Severity.Stop
            : wind * InlandGustFactor < night.Limits.GustMps.Caution ? Severity.Ok
            : Severity.Caution;
    }

    protected override Reason Found(NightEvidence night, Finding finding) =>
        new Reason.Gusts(finding.Severity, finding.When, finding.Value, finding.At, finding.Limit)
        {
            Mend = finding.Severity == Severity.Ok ? null : new Mend.GustsBelow(finding.Limit.Caution),
        };

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when)
    {
        var (first, last) = night.Grid.Cells(when);
        var most = double.NaN;
        var gaps = false;
        for (var cell = first; cell <= last; cell++)
        {
            var wind = double.IsNaN(night.Weather.GustMps[cell]) ? night.Weather.WindMps[cell] : night.Weather.GustMps[cell] / InlandGustFactor;
            if (double.IsNaN(wind)) gaps = true;
            else if (!(wind <= most)) most = wind;
        }

        var limit = night.Limits.GustMps;
        if (double.IsNaN(most) || gaps)
        {
            var held = severity == Severity.Stop ? limit.Stop : limit.Caution;
            return new Reason.WindNotKnown(severity, when, held) { Mend = new Mend.Knowledge(Mend.Missing.Wind) };
        }

        return new Reason.GustsFromMeanWind(severity, when, most, most * InlandGustFactor, limit)
        {
            Mend = severity == Severity.Ok ? null : new Mend.MeanWindBelow(limit.Caution / InlandGustFactor),
        };
    }
}
