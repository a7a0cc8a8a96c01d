using NightWatch.Planning.Verification;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.SimulatedYears;
using NightWatch.Words;
using Spectre.Console;
using static NightWatch.Service.Terminal.ScoreCells;

namespace NightWatch.Service.Commands.Simulations;

/// <summary>The scores of simulated years, for people.</summary>
internal static class YearsTable
{
    public static void Draw(Shell shell, YearsScores scores, TimeSpan took) => shell.Draw(console =>
    {
        var speech = Speech.ToAnybody;
        var language = speech.Language;
        console.WriteLine(language.YearsHeading(scores.Sites, scores.Years, scores.FirstNight, scores.Every, scores.Seed, took, speech));
        console.WriteLine(language.YearsNights(scores.Nights, scores.Usable, scores.Go, scores.LettersANight));
        console.WriteLine("Invented weather with 20 members: this tests the chain, and says nothing about any real feed. Neighbouring nights and sites share their weather, so the truth is wider than the brackets.");
        console.WriteLine();
        console.WriteLine("Calls: go or marginal is a call, and whether the night came usable");
        console.Write(Calls(scores));
        console.WriteLine("Probabilities: Brier score = REL - RES + UNC (and what the bins hide); RPS over the three classes; skill above 0 is better than the reference");
        console.Write(Probabilities(scores));
        console.WriteLine("Reliability by the prior alone: of the nights said so likely, % that came usable [95 % by Wilson] (nights); a dash below 10 nights");
        console.Write(Reliability(scores.Leads.Select(lead => (lead.LeadNights, lead.Raw.Reliability))));
        console.WriteLine("Reliability by what was learnt before each look");
        console.Write(Reliability(scores.Leads.Select(lead => (lead.LeadNights, lead.Learnt.Reliability))));
        foreach (var lead in scores.Leads) console.WriteLine(language.LearntLine(null, lead.LeadNights, null, language.Of(lead.Proof)));
        console.WriteLine();
        console.WriteLine("What a rule for going costs, a site and year; every rule knows the dark calendar");
        console.Write(Policies(scores));
        foreach (var duel in scores.Naive) console.WriteLine(duel.Text);
    });

    private static Table Calls(YearsScores scores)
    {
        var table = WithColumns("Nights ahead", "Hit", "False alarm", "Miss", "Correct rejection", "Hit rate", "False alarm ratio", "Bias", "Peirce skill");
        foreach (var lead in scores.Leads) Row(Ahead(lead.LeadNights), lead.Raw.Calls);
        Row("by the letters", scores.Letters.Calls);
        return table;

        void Row(string name, ContingencyTable calls) => table.AddRow(
            name, $"{calls.Hits}", $"{calls.FalseAlarms}", $"{calls.Misses}", $"{calls.CorrectRejections}",
            Percent(calls.HitRate), Percent(calls.FalseAlarmRatio), Number(calls.Bias), Number(calls.PeirceSkill));
    }

    private static Table Probabilities(YearsScores scores)
    {
        var table = WithColumns(
            "Nights ahead", "Brier", "REL", "RES", "UNC", "Learnt", "its REL", "Skill on climate", "on persistence", "RPS", "its skill");
        foreach (var lead in scores.Leads)
        {
            var (raw, learnt) = (lead.Raw.Brier, lead.Learnt.Brier);
            table.AddRow(
                Ahead(lead.LeadNights), Fine(raw.Value), Fine(raw.Reliability), Fine(raw.Resolution), Fine(raw.Uncertainty), Fine(learnt.Value), Fine(learnt.Reliability),
                Number(lead.Raw.SkillOnClimate), Number(lead.Raw.SkillOnPersistence), Fine(lead.Raw.RankedProbability), Number(lead.Raw.RankedSkill));
        }

        return table;
    }

    private static Table Policies(YearsScores scores)
    {
        var table = WithColumns("Rule", "Drives", "For nothing", "Usable nights lost", "Drives for nothing, %", "Usable nights lost, %");
        foreach (var rule in scores.Naive.Select(duel => duel.Naive).Prepend(scores.Letters))
        {
            table.AddRow(
                rule.Name, Number(rule.DrivesAYear, "0.0"), Number(rule.DrivesForNothingAYear, "0.0"), Number(rule.NightsLostAYear, "0.0"),
                Percent(rule.Calls.FalseAlarmRatio), Percent(1 - rule.Calls.HitRate));
        }

        return table;
    }
}
