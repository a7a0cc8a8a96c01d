using System.Collections.Immutable;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>What the sets of figures hold: one, share, worth, stretch, room, gust and, in two of them, rain, in that order.</summary>
public static class FigureSets
{
    private static readonly CoefficientSign[] withRain =
    [
        CoefficientSign.Free,
        CoefficientSign.AtLeastZero, CoefficientSign.AtLeastZero, CoefficientSign.AtLeastZero, CoefficientSign.AtLeastZero,
        CoefficientSign.AtMostZero, CoefficientSign.AtMostZero,
    ];

    /// <summary>All four.</summary>
    public static ImmutableArray<FigureSet> All { get; } = [.. Enum.GetValues<FigureSet>().Order()];

    /// <summary>Whether several runs are among the figures.</summary>
    public static bool HasRuns(this FigureSet set) => set is FigureSet.RunsAndRain or FigureSet.Runs;

    /// <summary>Whether the probability of rain is among the figures.</summary>
    public static bool HasRain(this FigureSet set) => set is FigureSet.RunsAndRain or FigureSet.NewestAndRain;

    /// <summary>How many figures it has, the constant among them.</summary>
    public static int Length(this FigureSet set) => set.HasRain() ? withRain.Length : withRain.Length - 1;

    /// <summary>The sign that each coefficient may have: a better forecast never gives less, a worse never more.</summary>
    public static IReadOnlyList<CoefficientSign> Signs(this FigureSet set) => withRain[..set.Length()];
}
