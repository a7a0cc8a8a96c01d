using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Weather.Archives;
using NightWatch.Words;
using Spectre.Console;

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
        console.WriteLine(LookTables.ChancesTitle);
        console.Write(LookTables.Chances(scores.ByLead));
        console.WriteLine(LookTables.ReliabilityTitle);
        console.Write(LookTables.Reliability(scores.ByLead));
        console.WriteLine(LookTables.ExpenseTitle);
        console.Write(LookTables.Expense(scores.ByLead));
        console.WriteLine(language.Of(scores.Letters));
    });
}
