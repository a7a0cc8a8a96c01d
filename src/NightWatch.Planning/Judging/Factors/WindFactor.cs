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

    protected override Reason Found(NightEvidence night, Finding finding)
    {
        var text = $"Gusts reach {Said.Number(finding.Value)} m/s around {Said.Clock(finding.At, night.Zone)}; "
            + $"a caution from {Said.Number(finding.Limit.Caution)} m/s, a no-go from {Said.Number(finding.Limit.Stop)} m/s.";
        return new Reason(
            Factor, finding.Severity, finding.When, finding.Value, finding.LimitHeld, Unit.MetresPerSecond, text,
            finding.Severity == Severity.Ok ? null : $"Gusts below {Said.Number(finding.Limit.Caution)} m/s through the run, or a place in the lee.");
    }

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
        var held = severity == Severity.Stop ? limit.Stop : limit.Caution;
        if (double.IsNaN(most) || gaps)
        {
            return new Reason(
                Factor, severity, when, null, held, Unit.MetresPerSecond, "Wind is not known for all of the run.", "A forecast of wind that covers the run.");
        }

        var text = $"The feed gives no gusts for these hours; from its mean wind of {Said.Number(most)} m/s they are put at "
            + $"{Said.Number(most * InlandGustFactor)} m/s; a caution from {Said.Number(limit.Caution)} m/s.";
        return new Reason(
            Factor, severity, when, most * InlandGustFactor, held, Unit.MetresPerSecond, text,
            severity == Severity.Ok ? null : $"A mean wind below {Said.Number(limit.Caution / InlandGustFactor)} m/s, or a place in the lee.",
            "WMO/TD-No. 1555, in-land gust factor 1.66 (from memory)");
    }
}
