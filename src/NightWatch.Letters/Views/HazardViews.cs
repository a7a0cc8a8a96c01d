using NightWatch.Planning.Hazards;
using NightWatch.Planning.Judging;

namespace NightWatch.Letters.Views;

/// <summary>What can hurt, first in the letter: each caution once, and one sentence at the end that the authorities have the last word.</summary>
internal static class HazardViews
{
    public static IReadOnlyList<string> Of(NightContext night)
    {
        // Where nobody goes, only what stops the night matters.
        var least = night.IsOff ? HazardLevel.Stop : HazardLevel.Care;
        var cautions = night.Plan.Cautions.Where(caution => caution.Level >= least).ToArray();
        var others = night.Plan.Verdict.Reasons.Where(NightViews.IsHazard).Where(reason => !cautions.Any(caution => Covers(caution, reason)));
        string[] said = [.. cautions.Select(caution => night.Units.Sentence(caution.Text)), .. others.Select(reason => Text(night, reason))];
        return said.Length == 0 || said[^1].Contains(Caution.Deference, StringComparison.Ordinal) ? said : [.. said[..^1], $"{said[^1]} {Caution.Deference}"];
    }

    /// <summary>A reason's sentence without the closing one, which the letter says once.</summary>
    public static string Bare(string text) => text.Replace($" {Caution.Deference}", "", StringComparison.Ordinal);

    private static bool Covers(Caution caution, Reason reason) =>
        reason.Factor == Factor.Thunder ? caution.Kind == HazardKind.Thunder : reason.Text.StartsWith(caution.Text, StringComparison.Ordinal);

    private static string Text(NightContext night, Reason reason)
    {
        var text = night.Units.Sentence(Bare(reason.Text));
        return reason.Fix is { } fix ? $"{text} {night.Units.Sentence(fix)}" : text;
    }
}
