using CsCheck;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Tests.Chance.Fitting;

public sealed class SymmetricMatrixTests
{
    private static readonly Gen<SymmetricMatrix> PositiveDefinite =
        from size in Gen.Int[1, 7]
        from rows in Gen.Double[-3, 3].Array[size].Array[size, size + 5]
        from ridge in Gen.Double[0.1, 2].Array[size]
        select SymmetricMatrix.OfRows(size, rows.Select(row => ((System.Collections.Immutable.ImmutableArray<double>)[.. row], 1.0)))
            .Plus(SymmetricMatrix.Diagonal(ridge));

    // By hand: ((4, 2), (2, 3)) has the determinant 8 and the inverse ((3, -2), (-2, 4)) / 8.
    [Fact]
    public void The_inverse_of_two_rows_is_as_by_hand()
    {
        var inverse = Cholesky.Of(SymmetricMatrix.OfLower(2, [4, 2, 3])).Inverse();

        Assert.Equal(3.0 / 8, inverse[0, 0], 12);
        Assert.Equal(-2.0 / 8, inverse[0, 1], 12);
        Assert.Equal(4.0 / 8, inverse[1, 1], 12);
    }

    [Fact]
    public void A_matrix_times_what_was_solved_is_what_was_wanted() =>
        PositiveDefinite.SelectMany(matrix => Gen.Double[-9, 9].Array[matrix.Size].Select(wanted => (matrix, wanted))).Sample(one =>
        {
            var (matrix, wanted) = one;
            var again = matrix.Times(Cholesky.Of(matrix).Solve(wanted));
            Assert.All(again.Zip(wanted), pair => Assert.Equal(pair.Second, pair.First, 1e-6));
        });

    [Fact]
    public void The_trace_of_a_matrix_with_its_inverse_is_its_size() =>
        PositiveDefinite.Sample(matrix => Assert.Equal(matrix.Size, matrix.TraceWith(Cholesky.Of(matrix).Inverse()), 1e-6));

    [Fact]
    public void Chosen_rows_are_chosen_columns_too()
    {
        var part = SymmetricMatrix.OfLower(3, [1, 2, 3, 4, 5, 6]).Of([0, 2]);

        Assert.Equal([1, 4, 6], part.Lower);
    }

    [Fact]
    public void What_is_not_positive_definite_has_no_factor()
    {
        Assert.Null(Cholesky.TryOf(SymmetricMatrix.OfLower(2, [1, 2, 1])));
        Assert.Throws<ArgumentException>(() => Cholesky.Of(SymmetricMatrix.Diagonal(1, 0)));
    }

    [Fact]
    public void A_triangle_with_a_value_missing_or_unknown_is_refused()
    {
        Assert.Throws<ArgumentException>(() => SymmetricMatrix.OfLower(2, [1, 2]));
        Assert.Throws<ArgumentException>(() => SymmetricMatrix.OfLower(2, [1, double.NaN, 2]));
    }
}
