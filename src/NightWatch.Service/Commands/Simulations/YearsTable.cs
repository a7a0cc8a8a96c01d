using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.SimulatedYears;
using NightWatch.Words;
using Spectre.Console;

namespace NightWatch.Service.Commands.Simulations;

/// <summary>The scores of simulated years, for people.</summary>
internal static class YearsTable
{
    public static void Draw(Shell shell, YearsScores scores, TimeSpan took) =>
        shell.Draw(console =>
        {
            var speech = Speech.ToAnybody;
            var language = speech.Language;
            console.WriteLine(
                language.YearsHeading(
                    scores.Climate, scores.Sites, scores.Years, scores.FirstNight, scores.Every, scores.Seed, took, speech));
            console.WriteLine(language.YearsNights(scores.Nights, scores.Usable));
            console.WriteLine(language.YearsAssumptions(scores.Members));
            console.WriteLine();
            console.WriteLine("By the prior that comes with the program, looking at 15:00");
            LookTables.Draw(console, [.. scores.Leads.Select(lead => lead.Said)]);
            console.WriteLine(language.Of(scores.Letters));
            console.WriteLine();
            console.WriteLine("The same by what all sites together had taught before each look");
            LookTables.Draw(console, [.. scores.Leads.Select(lead => lead.Learnt)]);
            foreach (var lead in scores.Leads) console.WriteLine(language.LearntLine(null, lead.LeadNights, null, language.Of(lead.Proof)));
        });
}
