using NightWatch.Planning.Chance;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;
using static NightWatch.Service.Terminal.ScoreCells;

namespace NightWatch.Service.Commands.Records;

/// <summary>The scores for people.</summary>
internal static class ScoresTables
{
    public static void Draw(Shell shell, RecordScores scores, IReadOnlyList<LearntChance> learnt) =>
        shell.Draw(console =>
        {
            var speech = Speech.ToAnybody;
            var language = speech.Language;
            (LocalDate, LocalDate)? span = scores is { From: { } from, To: { } to } ? (from, to) : null;
            console.WriteLine(language.ScoresHeading(scores.Watches, span, scores.Nights, scores.Known, scores.Sources, speech));
            foreach (var remark in RecordRemarks.Of(scores, language)) console.WriteLine(remark);
            if (scores.Tallies.Count > 0)
            {
                console.WriteLine();
                console.WriteLine("Nights by what each source told of them");
                console.Write(Told(scores, language));
            }

            if (scores.Known == 0)
            {
                console.WriteLine("No outcome is known yet: answer a debrief, or say one with 'outcome add'.");
                return;
            }

            console.WriteLine();
            console.WriteLine(
                "Calls: go or marginal is a call. Brackets: 95 % by Wilson 1927; nights of one spell share their weather, so the truth " +
                "is wider.");
            console.Write(Calls(scores));
            if (scores.Leads.Any(lead => lead.Told is not null))
            {
                LookTables.Draw(console, scores.ByLead);
                console.WriteLine(
                    "The same taken apart: Brier score = REL - RES + UNC (and what the bins hide); RPS over the three classes; "
                        + "skill above 0 is better than the reference");
                console.Write(Probabilities(scores));
            }

            foreach (var lead in scores.Leads.Where(lead => lead.Told is null))
                console.WriteLine(language.TooFewToScore(lead.LeadNights, lead.Calls.Table.Count, RecordScores.FewestToScore));
            foreach (var one in learnt)
                console.WriteLine(language.LearntLine(one.For.FeedId, one.For.Lead, one.Version, language.Of(one, place: null)));
        });

    private static Table Told(RecordScores scores, ILanguage language)
    {
        var table = WithColumns("Source", "Told usable", "Told not usable", "Not told", "Silent");
        foreach (var tally in scores.Tallies)
            table.AddRow(language.SourceName(tally.Source), $"{tally.Usable}", $"{tally.Unusable}", $"{tally.NotTold}", $"{tally.Silent}");
        return table;
    }

    private static Table Calls(RecordScores scores)
    {
        var table = WithColumns(
            "Nights ahead", "Hit", "False alarm", "Miss", "Correct rejection", "Right, %", "Usable of called, %", "Called of usable, %");
        foreach (var lead in scores.Leads) Row(Ahead(lead.LeadNights), lead.Calls);
        Row("by the letters", scores.Letters);
        return table;

        void Row(string name, RecordedCalls calls) => table.AddRow(
            name, $"{calls.Table.Hits}", $"{calls.Table.FalseAlarms}", $"{calls.Table.Misses}", $"{calls.Table.CorrectRejections}",
            Share(calls.Right), Share(calls.UsableOfCalled), Share(calls.CalledOfUsable));
    }

    private static Table Probabilities(RecordScores scores)
    {
        var table = WithColumns(
            "Nights ahead", "Brier", "REL", "RES", "UNC", "By the prior", "Skill on climate", "on persistence", "RPS", "its skill");
        foreach (var lead in scores.Leads)
        {
            if (lead is not { Told: { } told, Computed: { } computed }) continue;
            table.AddRow(
                Ahead(lead.LeadNights),
                Fine(told.Brier.Value),
                Fine(told.Brier.Reliability),
                Fine(told.Brier.Resolution),
                Fine(told.Brier.Uncertainty),
                Fine(computed.Brier.Value),
                Number(told.SkillOnClimate),
                Number(told.SkillOnPersistence),
                Fine(told.RankedProbability),
                Number(told.RankedSkill));
        }

        return table;
    }
}
