using NightWatch.Planning.Verification.Expenses;
using Spectre.Console;
using static NightWatch.Service.Terminal.ScoreCells;

namespace NightWatch.Service.Terminal;

/// <summary>The scores of looks by nights ahead, the same for an archive and for the service's own record.</summary>
internal static class LookTables
{
    /// <summary>All three tables, each under its heading.</summary>
    public static void Draw(IAnsiConsole console, IReadOnlyList<LookScores> leads)
    {
        console.WriteLine("Chances: Brier score; that of always saying the usable share of these very nights (climate); the skill on it");
        console.Write(Chances(leads));
        console.WriteLine("Reliability: said % > came % (nights)");
        console.Write(Reliability(leads));
        console.WriteLine("Expense a hundred nights, in drives for nothing; a usable night not gone to counts N");
        console.Write(Expense(leads));
    }

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

    /// <summary>Rules of which nothing is known have no column.</summary>
    private static Table Expense(IReadOnlyList<LookScores> leads)
    {
        RuleExpense[] rows = [.. leads.SelectMany(lead => lead.Expense)];
        var (hasLimits, hasCloud) = (rows.Any(row => row.FixedLimits is not null), rows.Any(row => row.DarkCloud.Count > 0));
        var table = WithColumns(
        [
            "Nights ahead", "N", "Calls", .. hasLimits ? ["Fixed limits"] : Array.Empty<string>(), "Always", "Never",
            .. hasCloud ? LookScores.CloudLimits.Select(limit => FormattableString.Invariant($"Cloud to {limit * 100:0} %")) : [],
        ]);
        foreach (var lead in leads)
        {
            foreach (var row in lead.Expense)
            {
                table.AddRow(
                [
                    Ahead(lead.Lead), Number(row.LossPerDrive, "0.##"), Number(row.Calls, "0.0"),
                    .. hasLimits ? [Number(row.FixedLimits, "0.0")] : Array.Empty<string>(),
                    Number(row.Always, "0.0"), Number(row.Never, "0.0"),
                    .. !hasCloud ? [] : LookScores.CloudLimits.Select(limit => CloudCell(row, limit)),
                ]);
            }
        }

        return table;
    }

    private static string CloudCell(RuleExpense row, double limit) =>
        row.DarkCloud.Where(rule => rule.Limit == limit).Select(rule => Number(rule.Expense, "0.0")).FirstOrDefault("-");
}
