using System.Collections.Immutable;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>From the figures of a forecast to the probability that the night is usable, for one feed, lead and place.</summary>
/// <remarks>
/// The regression's probability is drawn towards a half by how little its coefficients are known, and mixed with how often nights there
/// were usable. Both are the same for all nights: one variance and one weight, since a variance of each night's own would let a better
/// forecast have the lower chance.
/// </remarks>
public sealed class ChanceModel
{
    private readonly ImmutableDictionary<FigureSet, Regression> regressions;

    internal ChanceModel(ImmutableDictionary<FigureSet, Regression> regressions, double weight, double climate, double nights) =>
        (this.regressions, Weight, Climate, Nights) = (regressions, weight, climate, nights);

    /// <summary>Weight of the forecast, 0 to 1; the climate has the rest.</summary>
    public double Weight { get; }

    /// <summary>How often nights of the place were usable, as far as its record tells, 0 to 1.</summary>
    public double Climate { get; }

    /// <summary>Nights of the record that it was learnt from; 0: it is the prior's alone.</summary>
    public double Nights { get; }

    /// <summary>A prior taken at its word: without doubt of it and without a climate.</summary>
    public static ChanceModel OfPrior(ChancePrior prior, int lead)
    {
        ArgumentNullException.ThrowIfNull(prior);
        var certain = FigureSets.All.ToImmutableDictionary(set => set, set => new Regression(prior.Of(set, lead).Mean, 0));
        return new ChanceModel(certain, weight: 1, climate: 0.5, nights: 0);
    }

    /// <summary>The probability that the night is usable, 0 to 1.</summary>
    public double Of(ChanceFigures figures) => Weight * OfForecast(figures) + (1 - Weight) * Climate;

    /// <summary>What the forecast alone says, 0 to 1.</summary>
    public double OfForecast(ChanceFigures figures)
    {
        var regression = regressions[figures.Set];
        var logOdds = figures.Of(figures.Set).Zip(regression.Coefficients, (figure, coefficient) => figure * coefficient).Sum();
        return BayesLogistic.Moderated(logOdds, regression.Variance);
    }

    /// <summary>The coefficients of a set of figures.</summary>
    public ImmutableArray<double> Coefficients(FigureSet set) => regressions[set].Coefficients;

    /// <param name="Coefficients">In the order of <see cref="FigureSets"/>, with the signs it allows.</param>
    /// <param name="Variance">Of the log odds, the same for all nights.</param>
    internal readonly record struct Regression(ImmutableArray<double> Coefficients, double Variance);
}
