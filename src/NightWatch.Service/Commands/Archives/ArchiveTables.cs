using NightWatch.Planning.Verification.Expenses;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Weather.Archives;
using NightWatch.Words;
using Spectre.Console;
using static NightWatch.Service.Terminal.ScoreCells;

namespace NightWatch.Service.Commands.Archives;

/// <summary>The scores of an archive, for people.</summary>
internal static class ArchiveTables
{
    public static void Draw(
        Shell shell, ArchiveHeader header, IReadOnlyList<ArchivedNight> nights, ArchiveScores scores, TimeSpan took,
        PriorChoice prior, bool isLearning) => shell.Draw(console =>
    {
        var language = Speech.ToAnybody.Language;
        console.WriteLine(language.ArchiveHeading(header.Place, nights.Count, nights[0].Night, nights[^1].Night, took));
        console.WriteLine($"Forecasts of {header.Feed}: {header.Source}.");
        console.WriteLine($"Prior: {prior.ToString().ToLowerInvariant()}; learning: {(isLearning ? "on" : "off")}");
        foreach (var remark in ArchiveRemarks.Of(nights, language)) console.WriteLine(remark);
        console.WriteLine();
        console.WriteLine("Chances: Brier score; that of always saying the usable share of these very nights (climate); the skill on it");
        console.Write(Chances(scores.ByLead));
        console.WriteLine("Reliability: said % > came % (nights)");
        console.Write(Reliability(scores.ByLead));
        console.WriteLine("Expense a hundred nights, in drives for nothing; a usable night not gone to counts N");
        console.Write(Expense(scores.ByLead));
        console.WriteLine(language.Of(scores.Letters));
    });

    private static Table Chances(IReadOnlyList<LookScores> leads)
    {
        var table = WithColumns("Nights ahead", "Nights", "Usable %", "Brier", "Climate", "Skill");
        foreach (var lead in leads)
            table.AddRow(Ahead(lead.Lead), $"{lead.N}",
                Percent(lead.UsableShare), Number(lead.Brier, "0.0000"), Number(lead.Climate, "0.0000"), Number(lead.Skill));
        return table;
    }

    private static Table Reliability(IReadOnlyList<LookScores> leads)
    {
        var table = WithColumns(["Cell", .. leads.Select(lead => Ahead(lead.Lead))]);
        for (var cell = 0; cell < leads[0].Reliability.Count; cell++)
            table.AddRow([FormattableString.Invariant($"{cell * 10} to {cell * 10 + 10} %"),
                .. leads.Select(lead => Cell(lead.Reliability[cell]))]);
        return table;
    }

    private static string Cell(ReliabilityCell cell) =>
        cell is { Said: { } said, Came: { } came } ? FormattableString.Invariant($"{said * 100:0} > {came * 100:0} ({cell.N})") : "-";

    private static Table Expense(IReadOnlyList<LookScores> leads)
    {
        var table = WithColumns(
        [
            "Nights ahead", "N", "Calls", "Fixed limits", "Always", "Never",
            .. LookScores.CloudLimits.Select(limit => FormattableString.Invariant($"Cloud to {limit * 100:0} %")),
        ]);
        foreach (var lead in leads)
        {
            foreach (var row in lead.Expense)
            {
                table.AddRow(
                [
                    Ahead(lead.Lead), Number(row.LossPerDrive, "0.##"), Number(row.Calls, "0.0"), Number(row.FixedLimits, "0.0"),
                    Number(row.Always, "0.0"), Number(row.Never, "0.0"),
                    .. row.DarkCloud.Select(rule => Number(rule.Expense, "0.0")),
                ]);
            }
        }

        return table;
    }
}
