using System.Collections.Immutable;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>What is believed of one set of figures at one lead before an installation has a record of its own.</summary>
public sealed class PriorEntry
{
    /// <param name="set">Whose coefficients.</param>
    /// <param name="lead">Nights ahead, 0 on the day.</param>
    /// <param name="mean">The coefficients, in the order of <see cref="FigureSets"/>, with the signs it allows.</param>
    /// <param name="information">What one night tells of them in the mean: p(1-p) times the outer product of its figures.</param>
    /// <exception cref="ArgumentException">A size or a sign does not fit, or the information is not positive definite.</exception>
    public PriorEntry(FigureSet set, int lead, ImmutableArray<double> mean, SymmetricMatrix information)
    {
        ArgumentNullException.ThrowIfNull(information);
        ArgumentOutOfRangeException.ThrowIfNegative(lead);
        if (mean.Length != set.Length())
            throw new ArgumentException($"{set} has {mean.Length} coefficients; accepted: {set.Length()}.", nameof(mean));
        if (information.Size != mean.Length)
            throw new ArgumentException($"Information of {set} has {information.Size} rows; accepted: {mean.Length}.", nameof(information));
        if (mean.Where((value, i) => !double.IsFinite(value) || !Allows(set.Signs()[i], value)).Any())
            throw new ArgumentException($"A coefficient of {set} at lead {lead} is not finite or has the wrong sign.", nameof(mean));
        if (Cholesky.TryOf(information) is null)
            throw new ArgumentException($"The information of {set} at lead {lead} is not positive definite.", nameof(information));
        (Set, Lead, Mean, Information) = (set, lead, mean, information);
    }

    /// <summary>Whose coefficients.</summary>
    public FigureSet Set { get; }

    /// <summary>Nights ahead, 0 on the day.</summary>
    public int Lead { get; }

    /// <summary>The coefficients.</summary>
    public ImmutableArray<double> Mean { get; }

    /// <summary>Mean information that one night gives of them.</summary>
    public SymmetricMatrix Information { get; }

    /// <summary>As a distribution that weighs as much as a record of so many nights.</summary>
    public Belief Worth(double nights) => new(Mean, Information.Times(nights));

    private static bool Allows(CoefficientSign sign, double value) => sign switch
    {
        CoefficientSign.AtLeastZero => value >= 0,
        CoefficientSign.AtMostZero => value <= 0,
        _ => true,
    };
}
