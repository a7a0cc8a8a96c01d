using System.Collections.Frozen;
using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>
/// Priors each fitted without one block of two months, so that no night is judged by what was learnt from it or its neighbours.
/// </summary>
internal sealed class BlockPriors
{
    private readonly FrozenDictionary<int, ChancePrior> byBlock;

    private BlockPriors(FrozenDictionary<int, ChancePrior> byBlock) => this.byBlock = byBlock;

    /// <summary>Fits each block out once.</summary>
    /// <param name="looks">Of the whole archive.</param>
    /// <param name="source">Attribution of the data.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>Null: without some block too little is left to fit on.</returns>
    public static BlockPriors? Of(IReadOnlyList<SampledLook> looks, string source, CancellationToken stop)
    {
        int[] blocks = [.. looks.Select(look => ArchiveNights.BlockOf(look.Night)).Distinct()];
        if (blocks.Any(block => !IsEnough(looks.Where(look => ArchiveNights.BlockOf(look.Night) != block)))) return null;
        var priors = new ChancePrior[blocks.Length];
        var options = new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, blocks.Length, options, i => priors[i] = PriorFit.Of(
            [.. looks.Where(look => ArchiveNights.BlockOf(look.Night) != blocks[i])], $"without block {blocks[i]}", source));
        return new BlockPriors(blocks.Zip(priors).ToFrozenDictionary(pair => pair.First, pair => pair.Second));
    }

    // One look at each lead, from the day itself on.
    private static bool IsEnough(IEnumerable<SampledLook> looks)
    {
        int[] leads = [.. looks.Select(look => look.Lead).Distinct().Order()];
        return leads.Length > 0 && leads[^1] == leads.Length - 1;
    }

    /// <summary>The prior for a night; for one of a block without any look, that of another block.</summary>
    public ChancePrior Without(LocalDate night) =>
        byBlock.TryGetValue(ArchiveNights.BlockOf(night), out var prior) ? prior : byBlock.Values[0];
}
