using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Service.Terminal;
using NightWatch.Words;
using Spectre.Console;

namespace NightWatch.Service.Rehearsal;

/// <summary>What a rehearsal says on the screen at its end.</summary>
internal static class RehearsalSummary
{
    public static void Draw(Shell shell, RehearsalStory story, string indexFile, TimeSpan took) =>
        shell.Draw(console =>
        {
            console.WriteLine(
                Speech.ToAnybody.Language.RehearsalHeading(story.Days, story.Nights.Count, story.Letters.Count, story.Seed, took));
            var letters = new Table().Border(TableBorder.Simple).AddColumn("Letter").AddColumn("How many").AddColumn("The first");
            foreach (var kind in Enum.GetValues<LetterKind>())
            {
                var all = story.Of(kind).ToList();
                letters.AddRow(
                    new Text(TradeWords.Spaced(kind)),
                    new Text(FormattableString.Invariant($"{all.Count}")),
                    new Text(all.Count == 0 ? "-" : all[0].Subject));
            }

            console.Write(letters);
            foreach (var moment in Moments(story)) console.WriteLine(moment);
            var truth = new Table().Border(TableBorder.Simple).AddColumn("Last word before leaving");
            foreach (var came in Classes) truth.AddColumn("came " + TradeWords.Of(came));
            foreach (var said in Classes)
                truth.AddRow([TradeWords.Of(said), .. Classes.Select(came => FormattableString.Invariant($"{story.Count(said, came)}"))]);
            console.Write(truth);
            console.WriteLine($"Read them: {indexFile}");
        });

    private static IEnumerable<VerdictClass> Classes => Enum.GetValues<VerdictClass>().Reverse();

    private static IEnumerable<string> Moments(RehearsalStory story)
    {
        var speech = Speech.ToAnybody;
        var language = speech.Language;
        var held = story.AlternativesThatHeld().FirstOrDefault();
        if (held.Warning is null)
        {
            yield return language.AlternativeHeld(alternative: null, speech);
        }
        else
        {
            yield return language.WarnedAt(held.Warning.At, held.Warning.Subject, Speech.To(held.Alternative.Watch));
            yield return language.AlternativeHeld((held.Alternative.Watch.Site.Name, held.Alternative.Night), speech);
        }

        yield return language.QuietWeek(story.QuietWeek() is { } week ? (week.First, week.Last) : null, speech);
    }
}
