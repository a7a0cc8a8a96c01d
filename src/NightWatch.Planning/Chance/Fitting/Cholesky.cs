namespace NightWatch.Planning.Chance.Fitting;

/// <summary>A positive definite matrix as L times its transpose, with L lower triangular: what solving and inverting need.</summary>
/// <remarks>Golub and Van Loan, Matrix Computations, 4th edition, section 4.2. Meant for fewer than ten rows.</remarks>
public sealed class Cholesky
{
    private readonly int size;
    private readonly double[] root;

    private Cholesky(int size, double[] root) => (this.size, this.root) = (size, root);

    /// <summary>Factors a matrix.</summary>
    /// <exception cref="ArgumentException">It is not positive definite.</exception>
    public static Cholesky Of(SymmetricMatrix matrix) =>
        TryOf(matrix) ?? throw new ArgumentException("Accepted: a positive definite matrix.", nameof(matrix));

    /// <summary>Factors a matrix; null where it is not positive definite.</summary>
    public static Cholesky? TryOf(SymmetricMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        var root = matrix.Lower.ToArray();
        for (var i = 0; i < matrix.Size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var rest = root[At(i, j)];
                for (var k = 0; k < j; k++) rest -= root[At(i, k)] * root[At(j, k)];
                if (j < i) root[At(i, j)] = rest / root[At(j, j)];
                else if (rest > 0 && double.IsFinite(rest)) root[At(i, i)] = Math.Sqrt(rest);
                else return null;
            }
        }

        return new Cholesky(matrix.Size, root);
    }

    /// <summary>The vector that the matrix turns into the one given.</summary>
    public double[] Solve(ReadOnlySpan<double> wanted)
    {
        if (wanted.Length != size) throw new ArgumentException($"Accepted: {size} values.", nameof(wanted));
        double[] x = [.. wanted];
        for (var i = 0; i < size; i++)
        {
            for (var k = 0; k < i; k++) x[i] -= root[At(i, k)] * x[k];
            x[i] /= root[At(i, i)];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++) x[i] -= root[At(k, i)] * x[k];
            x[i] /= root[At(i, i)];
        }

        return x;
    }

    /// <summary>The inverse of the matrix.</summary>
    public SymmetricMatrix Inverse()
    {
        var lower = new double[root.Length];
        for (var j = 0; j < size; j++)
        {
            var column = new double[size];
            column[j] = 1;
            column = Solve(column);
            for (var i = j; i < size; i++) lower[At(i, j)] = column[i];
        }

        return SymmetricMatrix.OfLower(size, lower);
    }

    private static int At(int row, int column) => SymmetricMatrix.Place(row, column);
}
