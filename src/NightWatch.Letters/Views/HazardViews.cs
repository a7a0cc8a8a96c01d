using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;

namespace NightWatch.Letters.Views;

/// <summary>
/// What can hurt, first in the letter: each caution once, and one sentence at the end that the authorities have the last word.
/// </summary>
internal static class HazardViews
{
    public static IReadOnlyList<string> Of(NightContext night)
    {
        // On a no-go only what stops the night matters.
        var least = night.IsOff ? HazardLevel.Stop : HazardLevel.Care;
        var cautions = night.Plan.Cautions.Where(caution => caution.Level >= least).ToArray();
        var others = night.Plan.Verdict.Reasons.Where(reason => reason.IsHazard && !cautions.Any(caution => Covers(caution, reason)));
        string[] said = [.. cautions.Select(night.Speech.Of), .. others.Select(reason => Text(night, reason))];
        return said.Length == 0 ? said : [.. said[..^1], night.Speech.Closed(said[^1])];
    }

    private static bool Covers(Caution caution, Reason reason) =>
        reason is InHarmsWay harm ? harm.Caution == caution : reason.Factor == Factor.Thunder && caution.Kind == HazardKind.Thunder;

    private static string Text(NightContext night, Reason reason) =>
        night.Speech.Fix(reason) is { } fix ? $"{night.Speech.Of(reason)} {fix}" : night.Speech.Of(reason);
}
