using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Service.Terminal;
using NightWatch.Words;
using Spectre.Console;

namespace NightWatch.Service.Rehearsal;

/// <summary>What a rehearsal says on the screen at its end.</summary>
internal static class RehearsalSummary
{
    public static void Draw(Shell shell, RehearsalStory story, string indexFile, TimeSpan took) => shell.Draw(console =>
    {
        console.WriteLine(FormattableString.Invariant($"{story.Days} days, {story.Nights.Count} site-nights, {story.Letters.Count} letters, seed {story.Seed}, in {took.TotalSeconds:0.0} s."));
        var letters = new Table().Border(TableBorder.Simple).AddColumn("Letter").AddColumn("How many").AddColumn("The first");
        foreach (var kind in Enum.GetValues<LetterKind>())
        {
            var all = story.Of(kind).ToList();
            letters.AddRow(new Text(TradeWords.Spaced(kind)), new Text(FormattableString.Invariant($"{all.Count}")), new Text(all.Count == 0 ? "-" : all[0].Subject));
        }

        console.Write(letters);
        foreach (var moment in Moments(story)) console.WriteLine(moment);
        var truth = new Table().Border(TableBorder.Simple).AddColumn("Last word before leaving");
        foreach (var came in Classes) truth.AddColumn("came " + TradeWords.Of(came));
        foreach (var said in Classes) truth.AddRow([TradeWords.Of(said), .. Classes.Select(came => FormattableString.Invariant($"{story.Count(said, came)}"))]);
        console.Write(truth);
        console.WriteLine($"Read them: {indexFile}");
    });

    private static IEnumerable<VerdictClass> Classes => Enum.GetValues<VerdictClass>().Reverse();

    private static IEnumerable<string> Moments(RehearsalStory story)
    {
        var held = story.AlternativesThatHeld().FirstOrDefault();
        if (held.Warning is null)
        {
            yield return "No reschedule warning named an alternative that was then on.";
        }
        else
        {
            yield return $"Warned at {LocalText.DayTime(held.Warning.At, held.Alternative.Watch.Site.Zone)}: {held.Warning.Subject}";
            yield return $"Its alternative, {held.Alternative.Watch.Site.Name} on {LocalText.Date(held.Alternative.Night)}, was on.";
        }

        yield return story.QuietWeek() is { } week
            ? $"Quiet around full Moon: no letter from {LocalText.Date(week.First)} to {LocalText.Date(week.Last)}."
            : "No quiet week around full Moon.";
    }
}
