using NightWatch.Planning.Verification.Expenses;
using Spectre.Console;
using static NightWatch.Service.Terminal.ScoreCells;

namespace NightWatch.Service.Terminal;

/// <summary>Scores of looks by lead, over an archive or over invented years, for people.</summary>
internal static class LookTables
{
    public const string ChancesTitle = "Chances: Brier score; that of always saying the usable share of these very nights (climate); the skill on it";
    public const string ReliabilityTitle = "Reliability: said % > came % (nights)";
    public const string ExpenseTitle = "Expense a hundred nights, in drives for nothing; a usable night not gone to counts N";

    public static Table Chances(IReadOnlyList<LookScores> leads)
    {
        var table = WithColumns("Nights ahead", "Nights", "Usable %", "Brier", "Climate", "Skill");
        foreach (var lead in leads)
            table.AddRow(Ahead(lead.Lead), $"{lead.N}",
                Percent(lead.UsableShare), Number(lead.Brier, "0.0000"), Number(lead.Climate, "0.0000"), Number(lead.Skill));
        return table;
    }

    public static Table Reliability(IReadOnlyList<LookScores> leads)
    {
        var table = WithColumns(["Cell", .. leads.Select(lead => Ahead(lead.Lead))]);
        for (var cell = 0; cell < leads[0].Reliability.Count; cell++)
            table.AddRow([FormattableString.Invariant($"{cell * 10} to {cell * 10 + 10} %"),
                .. leads.Select(lead => Cell(lead.Reliability[cell]))]);
        return table;
    }

    private static string Cell(ReliabilityCell cell) =>
        cell is { Said: { } said, Came: { } came } ? FormattableString.Invariant($"{said * 100:0} > {came * 100:0} ({cell.N})") : "-";

    public static Table Expense(IReadOnlyList<LookScores> leads)
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
