using NightWatch.Planning.Nights;
using NightWatch.Service.Wording;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Plans;

/// <summary>A plan for people, in the site's local time.</summary>
internal static class PlanTable
{
    public static void Draw(Shell shell, NightPlan plan) => shell.Draw(console =>
    {
        var zone = plan.Watch.Site.Zone;
        console.WriteLine(FormattableString.Invariant(
            $"{Words.Of(plan.Verdict.Class).ToUpperInvariant()} for {plan.Watch.Site.Name}, night of {LocalText.Date(plan.Night)}, {plan.Verdict.Probability.Value * 100:0} % ({Words.Of(plan.Verdict.Probability)})"));
        console.WriteLine(plan.Verdict.Run is { } run ? $"Run: {LocalText.Span(run, zone)}, {LocalText.Length(run.Duration)}." : "No run.");
        console.WriteLine(plan.Summary.Cloud);
        console.WriteLine(plan.Summary.Dew);
        console.WriteLine(plan.Summary.Moon);

        var reasons = new Table().Border(TableBorder.Simple).AddColumn("Severity").AddColumn("Factor").AddColumn("Finding").AddColumn("Fix");
        foreach (var reason in plan.Verdict.Reasons)
            reasons.AddRow(new Text(Words.Of(reason.Severity)), new Text(Words.Of(reason.Factor)), new Text(reason.Text), new Text(reason.Fix ?? ""));
        console.Write(reasons);

        if (plan.Sequence is { } sequence)
        {
            console.WriteLine(FormattableString.Invariant(
                $"Sequence: {sequence.Shots} frames of {sequence.ExposureS:0.#} s every {sequence.IntervalS:0.#} s at ISO {sequence.Iso}, {sequence.PlaybackS:0.#} s of playback at {sequence.PlaybackFps:0.#} a second, {sequence.StorageGb:0.#} GB, trails of {sequence.TrailPixels:0.#} pixels."));
        }

        var timeline = new Table().Border(TableBorder.Simple).AddColumn("Local time").AddColumn("What").AddColumn("Why");
        foreach (var entry in plan.Timeline) timeline.AddRow(new Text(LocalText.DayTime(entry.At, zone)), new Text(entry.Title), new Text(entry.Why ?? ""));
        console.Write(timeline);
        if (plan.Packing.Count > 0) console.WriteLine("Pack: " + string.Join("; ", plan.Packing) + ".");
        if (plan.Forecast is not { } forecast) return;
        console.WriteLine($"Forecast of {forecast.FeedId}: {Issued(forecast, zone)}fetched {LocalText.DayTime(forecast.RetrievedAt, zone)}, {LocalText.Length(forecast.Age(plan.MadeAt))} old.");
        foreach (var data in plan.OtherForecasts.Prepend(forecast).Select(origin => origin.Attribution).Distinct())
            console.WriteLine($"{data.Text} ({data.Licence}, {data.Link}), combined and interpolated here.");
    });

    private static string Issued(ForecastOrigin forecast, DateTimeZone zone) => forecast.IssuedAt is { } at ? $"issued {LocalText.DayTime(at, zone)}, " : "";
}
