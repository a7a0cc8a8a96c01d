using NightWatch.Bench.Priors;
using NightWatch.Watchkeeping.Archives;

namespace NightWatch.Watchkeeping.Tests.Archives;

/// <summary>What looks at 21 months of New York said and what came, as the program's prior is fitted on it.</summary>
internal static class NewYork
{
    private static readonly Lazy<IReadOnlyList<SampledLook>> rows = new(() => Rows("new-york"));
    private static readonly Lazy<IReadOnlyList<FoldedLook>> folded =
        new(() => FoldTrial.Of([.. rows.Value.Where(look => look.Lead <= 3)]));

    /// <summary>Pooled over pieces of the night and needs, leads 0 to 5.</summary>
    public static IReadOnlyList<SampledLook> Looks => rows.Value;

    /// <summary>The default watch's own looks at leads 0 to 3, judged by fits that left out the two months around each.</summary>
    public static IReadOnlyList<FoldedLook> Folded => folded.Value;

    /// <summary>The rows of an extract.</summary>
    public static IReadOnlyList<SampledLook> Rows(string name) =>
        SampleText.Read(Path.Combine(AppContext.BaseDirectory, "Archives", "Extract", name + ".rows.csv.gz"));
}
