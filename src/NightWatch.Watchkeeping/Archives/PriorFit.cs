using System.Collections.Immutable;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>Fits a prior on what looks said and what came.</summary>
/// <remarks>
/// Logistic regression with a ridge, so that figures which say nearly the same share what they say, and with the signs of
/// <see cref="FigureSets.Signs"/>. Each night counts as one, however many questions it was asked; the watch's own has a fixed part of it.
/// </remarks>
internal static class PriorFit
{
    /// <summary>Precision of every coefficient but the constant about 0.</summary>
    private const double Ridge = 2;

    /// <summary>Precision of the constant about 0: next to nothing, and enough where every night came or none.</summary>
    private const double ConstantsRidge = 0.01;

    /// <summary>Part of a night that the watch's own question has where others stand beside it.</summary>
    private const double WatchsPart = 0.3;

    /// <summary>Fits every set of figures at every lead.</summary>
    /// <param name="looks">At leads from 0 without a gap, some at each.</param>
    /// <param name="name">Of the prior.</param>
    /// <param name="source">What it was fitted on, with the attribution of the data.</param>
    public static ChancePrior Of(IReadOnlyCollection<SampledLook> looks, string name, string source) => new(
        name,
        source,
        from lead in looks.GroupBy(look => look.Lead)
        let weighed = Weighed([.. lead])
        from set in FigureSets.All
        select EntryOf(set, lead.Key, weighed));

    private static PriorEntry EntryOf(FigureSet set, int lead, IReadOnlyList<(SampledLook Look, double Weight)> looks)
    {
        LogisticRow[] rows =
        [
            .. from look in looks
               where look.Look.Figures.Has(set)
               select new LogisticRow(look.Look.Figures.Of(set), look.Look.Usable, look.Weight),
        ];
        var size = set.Length();
        var ridge = SymmetricMatrix.Diagonal([ConstantsRidge, .. Enumerable.Repeat(Ridge, size - 1)]);
        var mean = BayesLogistic.Fit(new Belief([.. new double[size]], ridge), rows, set.Signs()).Posterior.Mean;
        var nights = Math.Max(1, rows.Sum(row => row.Weight));
        // The ridge keeps it proper where a figure never moved.
        var information = SymmetricMatrix.OfRows(size, rows.Select(row => Told(row, mean))).Plus(ridge).Times(1 / nights);
        return new PriorEntry(set, lead, mean, information);
    }

    private static (ImmutableArray<double> Figures, double Weight) Told(LogisticRow row, ImmutableArray<double> mean)
    {
        var p = BayesLogistic.Sigmoid(row.Figures.Zip(mean, (figure, coefficient) => figure * coefficient).Sum());
        return (row.Figures, row.Weight * p * (1 - p));
    }

    private static List<(SampledLook Look, double Weight)> Weighed(IReadOnlyList<SampledLook> lead)
    {
        var all = new List<(SampledLook, double)>(lead.Count);
        foreach (var night in lead.GroupBy(look => look.Night))
        {
            var (own, others) = (night.Count(look => look.IsWatchs), night.Count(look => !look.IsWatchs));
            var part = own == 0 ? 0 : others == 0 ? 1 : WatchsPart;
            all.AddRange(night.Select(look => (look, look.IsWatchs ? part / own : (1 - part) / others)));
        }

        return all;
    }
}
