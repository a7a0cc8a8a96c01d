using NightWatch.Letters.Views;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Service.Terminal;
using NightWatch.Words;
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
        var speech = Speech.To(plan.Watch);
        var language = speech.Language;
        console.WriteLine(language.PlanHeading(plan.Watch.Site.Name, plan.Night, plan.Verdict, speech));
        var hazards = plan.Cautions.Where(caution => caution.Level > HazardLevel.Note).ToList();
        foreach (var hazard in hazards) console.WriteLine(language.Hazard(hazard, speech));
        if (hazards.Count > 0) console.WriteLine(language.Deference);
        console.WriteLine(language.RunLine(plan.Verdict.Run, speech));
        if (plan.LeaveBy is { } leaveBy) console.WriteLine(language.LeaveBy(leaveBy, speech));
        console.WriteLine(speech.Cloud(plan.Summary));
        console.WriteLine(speech.Dew(plan.Summary));
        console.WriteLine(speech.Moon(plan.Summary));
    }

    private static void Reasons(IAnsiConsole console, NightPlan plan)
    {
        var reasons = new Table()
            .Border(TableBorder.Simple)
            .AddColumn("Severity")
            .AddColumn("Factor")
            .AddColumn("Finding")
            .AddColumn("Fix");
        var speech = Speech.To(plan.Watch);
        foreach (var reason in plan.Verdict.Reasons)
            reasons.AddRow(
                new Text(TradeWords.Of(reason.Severity)),
                new Text(TradeWords.Of(reason.Factor)),
                new Text(speech.Whole(reason)),
                new Text(speech.Fix(reason) ?? ""));
        console.Write(reasons);
    }

    private static void Shooting(IAnsiConsole console, NightPlan plan)
    {
        var speech = Speech.To(plan.Watch);
        var table = new Table().Border(TableBorder.Simple).AddColumn("Plan").AddColumn("Figures");
        if (plan.Sequence is { } sequence)
        {
            table.AddRow(new Text("Frames"), new Text(speech.Language.Frames(sequence)));
            table.AddRow(new Text("Star trails"), new Text(speech.Language.Trails(sequence)));
        }

        foreach (var fact in FieldFacts.Of(plan)) table.AddRow(new Text(fact.Name), new Text(fact.Text));
        if (plan.SkyBrightness is { Domes.Count: > 0 } sky)
            table.AddRow(new Text("Glow domes"), new Text(string.Join("; ", sky.Domes.Select(dome => speech.Language.Of(dome, speech)))));
        if (table.Rows.Count > 0) console.Write(table);
    }

    private static void Timeline(IAnsiConsole console, NightPlan plan)
    {
        var timeline = new Table().Border(TableBorder.Simple).AddColumn("Local time").AddColumn("What").AddColumn("Why");
        var speech = Speech.To(plan.Watch);
        foreach (var entry in plan.Timeline)
            timeline.AddRow(new Text(speech.Clock.Full(entry.At)), new Text(speech.Title(entry)), new Text(speech.Why(entry) ?? ""));
        console.Write(timeline);
    }

    private static void Later(IAnsiConsole console, NightPlan plan, IReadOnlyList<NightPlan> later)
    {
        if (later.Count == 0) return;
        var table = new Table()
            .Border(TableBorder.Simple)
            .AddColumn("Later nights here")
            .AddColumn("Verdict")
            .AddColumn("Run")
            .AddColumn("Because");
        var speech = Speech.To(plan.Watch);
        foreach (var night in later)
        {
            table.AddRow(
                new Text(speech.Language.LaterNight(night.Night, Alternatives.IsFree(night), speech)),
                new Text(speech.Language.VerdictCell(night.Verdict.Class, night.Verdict.Probability.Value)),
                new Text(speech.Language.RunCell(night.Verdict.Run, speech)),
                new Text(speech.Whole(night.Verdict.Deciding)));
        }

        console.Write(table);
    }

    private static void Sources(IAnsiConsole console, NightPlan plan)
    {
        console.WriteLine("Sources:");
        var speech = Speech.To(plan.Watch);
        var language = speech.Language;
        foreach (var same in plan.Verdict.Reasons.GroupBy(speech.Source))
            console.WriteLine("  " + language.FiguresFrom([.. same.Select(reason => reason.Factor)], same.Key));
        if (plan.Sequence is { } sequence) console.WriteLine("  " + language.ExposureFrom(sequence.Source));
        if (plan.Forecast is not { } forecast) return;
        foreach (var data in plan.OtherForecasts.Prepend(forecast).Select(origin => origin.Attribution).Distinct())
            console.WriteLine("  " + language.WeatherFrom(data));
        console.WriteLine(language.ForecastAge(forecast, plan.MadeAt, speech));
    }
}
