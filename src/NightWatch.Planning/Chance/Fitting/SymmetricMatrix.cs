using System.Collections.Immutable;

namespace NightWatch.Planning.Chance.Fitting;

/// <summary>A small symmetric matrix, immutable; only its lower triangle is kept.</summary>
public sealed class SymmetricMatrix
{
    private readonly double[] lower;

    private SymmetricMatrix(int size, double[] lower) => (Size, this.lower) = (size, lower);

    /// <summary>Rows, and columns.</summary>
    public int Size { get; }

    /// <summary>The lower triangle row by row: 00, 10, 11, 20, 21, 22 and so on.</summary>
    public IReadOnlyList<double> Lower => lower;

    /// <summary>An element.</summary>
    public double this[int row, int column] => row >= column ? lower[Place(row, column)] : lower[Place(column, row)];

    /// <summary>From its lower triangle, row by row.</summary>
    /// <exception cref="ArgumentException">Not as many values as such a triangle has, or one that is not finite.</exception>
    public static SymmetricMatrix OfLower(int size, IReadOnlyList<double> lower)
    {
        ArgumentNullException.ThrowIfNull(lower);
        if (lower.Count != TriangleOf(size))
            throw new ArgumentException($"Accepted: {TriangleOf(size)} values for {size} rows.", nameof(lower));
        if (!lower.All(double.IsFinite)) throw new ArgumentException("Accepted: finite numbers.", nameof(lower));
        return new SymmetricMatrix(size, [.. lower]);
    }

    /// <summary>Nothing but a diagonal.</summary>
    public static SymmetricMatrix Diagonal(params IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var lower = new double[TriangleOf(values.Count)];
        for (var i = 0; i < values.Count; i++) lower[Place(i, i)] = values[i];
        return OfLower(values.Count, lower);
    }

    /// <summary>The sum over the rows of weight times the row's outer product with itself.</summary>
    /// <param name="size">Values in a row.</param>
    /// <param name="rows">The rows with their weights.</param>
    public static SymmetricMatrix OfRows(int size, IEnumerable<(ImmutableArray<double> Row, double Weight)> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var lower = new double[TriangleOf(size)];
        foreach (var (row, weight) in rows) AddOuter(lower, row.AsSpan(), weight);
        return new SymmetricMatrix(size, lower);
    }

    /// <summary>This and another of the same size, added.</summary>
    public SymmetricMatrix Plus(SymmetricMatrix other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Size != Size) throw new ArgumentException($"Accepted: a matrix of {Size} rows.", nameof(other));
        return new SymmetricMatrix(Size, [.. lower.Zip(other.lower, (a, b) => a + b)]);
    }

    /// <summary>Every element times a number.</summary>
    public SymmetricMatrix Times(double factor) => new(Size, [.. lower.Select(value => value * factor)]);

    /// <summary>The rows and columns chosen, in that order.</summary>
    public SymmetricMatrix Of(IReadOnlyList<int> chosen)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        var part = new double[TriangleOf(chosen.Count)];
        for (var i = 0; i < chosen.Count; i++)
            for (var j = 0; j <= i; j++) part[Place(i, j)] = this[chosen[i], chosen[j]];
        return new SymmetricMatrix(chosen.Count, part);
    }

    /// <summary>The matrix times a vector.</summary>
    public double[] Times(ReadOnlySpan<double> vector)
    {
        if (vector.Length != Size) throw new ArgumentException($"Accepted: {Size} values.", nameof(vector));
        var product = new double[Size];
        for (var i = 0; i < Size; i++)
            for (var j = 0; j < Size; j++) product[i] += this[i, j] * vector[j];
        return product;
    }

    /// <summary>The trace of this times another of the same size: the sum of the products of their elements.</summary>
    public double TraceWith(SymmetricMatrix other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var sum = 0.0;
        for (var i = 0; i < Size; i++)
            for (var j = 0; j < Size; j++) sum += this[i, j] * other[i, j];
        return sum;
    }

    /// <summary>How many values a triangle of so many rows has.</summary>
    internal static int TriangleOf(int size) => size * (size + 1) / 2;

    /// <summary>Where an element of the lower triangle stands; the column is at most the row.</summary>
    internal static int Place(int row, int column) => row * (row + 1) / 2 + column;

    /// <summary>Adds weight times the row's outer product to a lower triangle.</summary>
    internal static void AddOuter(double[] lower, ReadOnlySpan<double> row, double weight)
    {
        for (var i = 0; i < row.Length; i++)
        {
            var scaled = weight * row[i];
            for (var j = 0; j <= i; j++) lower[Place(i, j)] += scaled * row[j];
        }
    }
}
