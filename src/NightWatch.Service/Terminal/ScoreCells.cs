using System.Globalization;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Words;
using Spectre.Console;

namespace NightWatch.Service.Terminal;

/// <summary>How tables of scores show their figures.</summary>
internal static class ScoreCells
{
    public static Table WithColumns(params string[] columns)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumns([.. columns.Select(Markup.Escape)]);
        foreach (var column in table.Columns.Skip(1)) column.RightAligned();
        return table;
    }

    /// <summary>One row a tenth, one column a lead.</summary>
    public static Table Reliability(IEnumerable<(int LeadNights, IReadOnlyList<ReliabilityBin> Bins)> leads)
    {
        var all = leads.ToList();
        var table = WithColumns(["Said", .. all.Select(lead => Ahead(lead.LeadNights))]);
        for (var bin = 0; bin < ReliabilityDiagram.UsualBins; bin++)
            table.AddRow([FormattableString.Invariant($"{bin * 10} to {bin * 10 + 10} %"), .. all.Select(lead => Bin(lead.Bins[bin]))]);
        return table;
    }

    public static string Ahead(int lead) => Speech.ToAnybody.Language.AheadCell(lead);

    /// <summary>"82 [66,91] (28 of 34)".</summary>
    public static string Share(Rate rate) =>
        rate.Share is { } share
            ? Markup.Escape(FormattableString.Invariant($"{share * 100:0} {Bracket(rate.Interval)} ({rate.Hits} of {rate.Count})"))
            : "-";

    public static string Percent(double? share) => share is { } s ? FormattableString.Invariant($"{s * 100:0.0}") : "-";

    public static string Fine(double value) => value.ToString("0.0000", CultureInfo.InvariantCulture);

    public static string Number(double? value, string format = "0.00") => value?.ToString(format, CultureInfo.InvariantCulture) ?? "-";

    private static string Bin(ReliabilityBin bin) =>
        bin.IsShown ? Markup.Escape(FormattableString.Invariant($"{bin.Frequency * 100:0} {Bracket(bin.Interval)} ({bin.Count})")) : "-";

    private static string Bracket(ProportionInterval interval) =>
        FormattableString.Invariant($"[{interval.Low * 100:0},{interval.High * 100:0}]");
}
