using System.Collections.Immutable;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Chance.Fitting;
using NightWatch.Planning.Verification;
using NightWatch.Watchkeeping.Archives;

namespace NightWatch.Bench.Priors;

/// <summary>A watch's own look with what was said by models that never saw the two months around it.</summary>
/// <param name="Look">The look.</param>
/// <param name="Chance">By the prior's fit.</param>
/// <param name="Simple">By a logistic regression on three figures of the cloud.</param>
internal readonly record struct FoldedLook(SampledLook Look, double Chance, double Simple);

/// <summary>Judges a fit on blocks of two months that it was not made on.</summary>
internal static class FoldTrial
{
    /// <summary>Every look at the watch's own question whose cloud is known.</summary>
    public static IReadOnlyList<FoldedLook> Of(IReadOnlyList<SampledLook> looks)
    {
        var priors = BlockPriors.Of(looks, "", CancellationToken.None)!;
        return
        [
            .. from look in looks
               where IsJudged(look)
               group look by (look.Lead, Block: ArchiveNights.BlockOf(look.Night)) into fold
               let simple = SimpleFit([.. looks.Where(look =>
                   IsJudged(look) && look.Lead == fold.Key.Lead && ArchiveNights.BlockOf(look.Night) != fold.Key.Block)])
               let model = ChanceModel.OfPrior(priors.Without(fold.First().Night), fold.Key.Lead)
               from look in fold
               select new FoldedLook(look, model.Of(look.Figures), Said(simple, look.Cloud!.Value)),
        ];
    }

    /// <summary>Skill of the Brier score on the climate of these very looks.</summary>
    public static double Skill(IEnumerable<FoldedLook> looks, Func<FoldedLook, double> said) =>
        BrierScore.Of([.. looks.Select(look => new ForecastPair(said(look), look.Look.Usable))]).Skill!.Value;

    private static bool IsJudged(SampledLook look) => look is { IsWatchs: true, Cloud: not null };

    private static ImmutableArray<double> SimpleFit(IReadOnlyList<SampledLook> looks) => BayesLogistic.Fit(
        new Belief([0, 0, 0, 0], SymmetricMatrix.Diagonal(0, 1e-6, 1e-6, 1e-6)),
        [.. looks.Select(look => new LogisticRow(Figures(look.Cloud!.Value), look.Usable))]).Posterior.Mean;

    private static double Said(ImmutableArray<double> fit, DarkCloud cloud) =>
        BayesLogistic.Sigmoid(fit.Zip(Figures(cloud), (a, b) => a * b).Sum());

    private static ImmutableArray<double> Figures(DarkCloud cloud) => [1, cloud.Mean, cloud.BestMean, cloud.Spread];
}
