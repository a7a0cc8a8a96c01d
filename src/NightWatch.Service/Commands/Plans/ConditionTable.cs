using NightWatch.Planning.Nights;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Plans;

/// <summary>The conditions along the run, at most a dozen lines; the document has every five minutes.</summary>
internal static class ConditionTable
{
    private const int MostLines = 12;

    public static Table Of(NightPlan plan, Interval run)
    {
        var steps = plan.Conditions.Where(step => run.Contains(step.At)).ToList();
        var every = Math.Max(1, (int)Math.Ceiling(steps.Count / (double)MostLines));
        var table = new Table().Border(TableBorder.Simple);
        foreach (
            var name in (string[])
                [
                    "Time", "Cloud", "Air °C", "Wind m/s", "Rain mm/h", "Lens over dew K", "with heater K", "Subject alt, az", "Sky mag",
                    "Contrast", "In frame",
                ])
            table.AddColumn(name);
        foreach (var step in steps.Where((_, i) => i % every == 0))
            table.AddRow([.. Cells(step, Speech.Metric(plan.Watch.Site.Zone)).Select(cell => new Text(cell))]);
        return table;
    }

    private static IEnumerable<string> Cells(ConditionStep step, Speech speech)
    {
        return
        [
            speech.Clock.Time(step.At),
            Percent(step.Cloud),
            Figure(step.AirC),
            Figure(step.WindMps),
            Figure(step.RainMmPerH),
            Figure(step.LensDewMarginK),
            step.LensHeatedDewMarginK is null ? "-" : Figure(step.LensHeatedDewMarginK),
            step.Subject is { } subject ? $"{speech.Degrees(subject.AltitudeDeg)}, {speech.Degrees(subject.AzimuthDeg)}" : "-",
            Figure(step.SkyMag), Percent(step.Contrast), Percent(step.SkyShare),
        ];

        string Figure(double? value) => value is { } known ? speech.OneDecimal(known) : "?";

        string Percent(double? value) => value is { } share ? speech.Percent(share) : "?";
    }
}
