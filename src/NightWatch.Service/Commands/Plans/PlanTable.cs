using System.Globalization;
using NightWatch.Letters.Views;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Service.Terminal;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Plans;

/// <summary>A plan for people, in the site's local time.</summary>
internal static class PlanTable
{
    public static void Draw(Shell shell, NightPlan plan, IReadOnlyList<NightPlan> later) => shell.Draw(console =>
    {
        Head(console, plan);
        Reasons(console, plan);
        Shooting(console, plan);
        if (plan.Verdict.Run is { } run) console.Write(ConditionTable.Of(plan, run));
        Timeline(console, plan);
        if (plan.Packing.Count > 0)
        {
            console.WriteLine("Pack:");
            foreach (var item in plan.Packing) console.WriteLine($"  - {Speech.To(plan.Watch).Of(item)}.");
        }

        Later(console, plan, later);
        Sources(console, plan);
    });

    private static void Head(IAnsiConsole console, NightPlan plan)
    {
        var zone = plan.Watch.Site.Zone;
        console.WriteLine(Say(
            $"{TradeWords.Of(plan.Verdict.Class).ToUpperInvariant()} for {plan.Watch.Site.Name}, night of {LocalText.Date(plan.Night)}, {plan.Verdict.Probability.Value * 100:0} % ({TradeWords.Of(plan.Verdict.Probability)})"));
        var hazards = plan.Cautions.Where(caution => caution.Level > HazardLevel.Note).ToList();
        var speech = Speech.To(plan.Watch);
        foreach (var hazard in hazards) console.WriteLine($"HAZARD: {speech.Of(hazard)}");
        if (hazards.Count > 0) console.WriteLine(speech.Language.Deference);
        console.WriteLine(plan.Verdict.Run is { } run ? $"Run: {LocalText.Span(run, zone)}, {LocalText.Length(run.Duration)}." : "No run.");
        if (plan.LeaveBy is { } leaveBy) console.WriteLine($"Leave by: {LocalText.DayTime(leaveBy, zone)}.");
        console.WriteLine(speech.Cloud(plan.Summary));
        console.WriteLine(speech.Dew(plan.Summary));
        console.WriteLine(speech.Moon(plan.Summary));
    }

    private static void Reasons(IAnsiConsole console, NightPlan plan)
    {
        var reasons = new Table().Border(TableBorder.Simple).AddColumn("Severity").AddColumn("Factor").AddColumn("Finding").AddColumn("Fix");
        var speech = Speech.To(plan.Watch);
        foreach (var reason in plan.Verdict.Reasons)
            reasons.AddRow(new Text(TradeWords.Of(reason.Severity)), new Text(TradeWords.Of(reason.Factor)), new Text(speech.Whole(reason)), new Text(speech.Fix(reason) ?? ""));
        console.Write(reasons);
    }

    private static void Shooting(IAnsiConsole console, NightPlan plan)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn("Plan").AddColumn("Figures");
        if (plan.Sequence is { } sequence)
        {
            table.AddRow(new Text("Frames"), new Text(Frames(sequence)));
            table.AddRow(new Text("Star trails"), new Text(Trails(sequence)));
        }

        foreach (var fact in FieldFacts.Of(plan)) table.AddRow(new Text(fact.Name), new Text(fact.Text));
        if (plan.SkyBrightness is { Domes.Count: > 0 } sky)
            table.AddRow(new Text("Glow domes"), new Text(string.Join("; ", sky.Domes.Select(dome => Dome(dome, plan.Watch.Site.Zone)))));
        if (table.Rows.Count > 0) console.Write(table);
    }

    private static string Frames(Sequence sequence) =>
        Say($"{sequence.Shots} of {sequence.ExposureS:0.#} s every {sequence.IntervalS:0.#} s at ISO {sequence.Iso}, {sequence.PlaybackS:0.#} s of playback at {sequence.PlaybackFps:0.#} a second")
        + (sequence.WishedPlaybackS is { } wished ? Say($" ({wished:0.#} s wished)") : "") + Say($", {sequence.StorageGb:0.#} GB");

    private static string Trails(Sequence sequence) => Say(
        $"{sequence.TrailPixels:0.#} pixels at the centre, {sequence.TrailPixelsAtCorner:0.#} in the worst corner (fastest declination {sequence.FastestDeclinationDeg:0.#}°); longest exposure {sequence.TrailLimitS:0.#} s, by 600 / focal length {sequence.CommonPracticeLimitS:0.#} s (common practice), by NPF {sequence.NpfSimpleS:0.#} s short and {sequence.NpfFullS:0.#} s full");

    private static string Dome(PathDome dome, DateTimeZone zone) =>
        Say($"{dome.Town} {dome.DistanceKm:0} km at azimuth {dome.AzimuthDeg:0}°, {dome.BrighteningMag:0.0#} mag at 45°")
        + (dome is { LeastApartDeg: { } apart, NearestAt: { } at } ? Say($", {apart:0}° from the subject at {LocalText.Clock(at, zone)}") : "");

    private static void Timeline(IAnsiConsole console, NightPlan plan)
    {
        var timeline = new Table().Border(TableBorder.Simple).AddColumn("Local time").AddColumn("What").AddColumn("Why");
        var speech = Speech.To(plan.Watch);
        foreach (var entry in plan.Timeline)
            timeline.AddRow(new Text(LocalText.DayTime(entry.At, plan.Watch.Site.Zone)), new Text(speech.Title(entry)), new Text(speech.Why(entry) ?? ""));
        console.Write(timeline);
    }

    private static void Later(IAnsiConsole console, NightPlan plan, IReadOnlyList<NightPlan> later)
    {
        if (later.Count == 0) return;
        var table = new Table().Border(TableBorder.Simple).AddColumn("Later nights here").AddColumn("Verdict").AddColumn("Run").AddColumn("Because");
        foreach (var night in later)
        {
            table.AddRow(
                new Text(LocalText.Date(night.Night) + (Alternatives.IsFree(night) ? "" : " (not a free evening)")),
                new Text(Say($"{TradeWords.Of(night.Verdict.Class)}, {night.Verdict.Probability.Value * 100:0} %")),
                new Text(night.Verdict.Run is { } run ? $"{LocalText.Clock(run.Start, plan.Watch.Site.Zone)} to {LocalText.Clock(run.End, plan.Watch.Site.Zone)}" : "none"),
                new Text(Speech.To(night.Watch).Whole(night.Verdict.Deciding)));
        }

        console.Write(table);
    }

    private static void Sources(IAnsiConsole console, NightPlan plan)
    {
        console.WriteLine("Sources:");
        var speech = Speech.To(plan.Watch);
        foreach (var same in plan.Verdict.Reasons.GroupBy(speech.Source))
            console.WriteLine($"  {string.Join(", ", same.Select(reason => TradeWords.Of(reason.Factor)))}: {same.Key}.");
        if (plan.Sequence is { } sequence) console.WriteLine($"  exposure: {speech.Of(sequence.Source)}.");
        if (plan.Forecast is not { } forecast) return;
        foreach (var data in plan.OtherForecasts.Prepend(forecast).Select(origin => origin.Attribution).Distinct())
            console.WriteLine($"  weather: {data.Text} ({data.Licence}, {data.Link}), combined and interpolated here.");
        console.WriteLine($"Forecast of {forecast.FeedId}: {Issued(forecast, plan.Watch.Site.Zone)}fetched {LocalText.DayTime(forecast.RetrievedAt, plan.Watch.Site.Zone)}, {LocalText.Length(forecast.Age(plan.MadeAt))} old.");
    }

    private static string Issued(ForecastOrigin forecast, DateTimeZone zone) => forecast.IssuedAt is { } at ? $"issued {LocalText.DayTime(at, zone)}, " : "";

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
