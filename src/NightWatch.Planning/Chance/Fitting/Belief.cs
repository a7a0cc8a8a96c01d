using System.Collections.Immutable;

namespace NightWatch.Planning.Chance.Fitting;

/// <summary>What is believed of the coefficients of a regression: a normal distribution.</summary>
public sealed class Belief
{
    /// <param name="mean">One value a coefficient, finite.</param>
    /// <param name="precision">Inverse of the covariance, as many rows; zero on the diagonal where nothing is known.</param>
    /// <exception cref="ArgumentException">The sizes differ, or a value is not finite.</exception>
    public Belief(ImmutableArray<double> mean, SymmetricMatrix precision)
    {
        ArgumentNullException.ThrowIfNull(precision);
        if (mean.Length != precision.Size) throw new ArgumentException($"Accepted: {precision.Size} values.", nameof(mean));
        if (!mean.All(double.IsFinite)) throw new ArgumentException("Accepted: finite numbers.", nameof(mean));
        (Mean, Precision) = (mean, precision);
    }

    /// <summary>The most likely coefficients.</summary>
    public ImmutableArray<double> Mean { get; }

    /// <summary>How surely they are known: the inverse of their covariance.</summary>
    public SymmetricMatrix Precision { get; }

    /// <summary>The covariance.</summary>
    /// <exception cref="ArgumentException">The precision is not positive definite: of some coefficient nothing is known.</exception>
    public SymmetricMatrix Covariance() => Cholesky.Of(Precision).Inverse();
}
