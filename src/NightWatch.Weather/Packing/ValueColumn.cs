using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Packing;

/// <summary>
/// The values of one quantity. Feeds give a few decimals, so a column is whole numbers n with value = n / scale / divisor, each told by its
/// difference from the one before; where that is not exact for every value the column is the doubles themselves.
/// </summary>
/// <remarks>
/// A byte says how: 0 is doubles, all their first bytes, then all their second and so on, little-endian; k from 1 is the k-th of
/// <see cref="Ways"/> and signed numbers. The divisors are those of the readers' units: per cent and km/h.
/// </remarks>
internal static class ValueColumn
{
    private const double LargestExact = 1L << 53;

    /// <summary>Released packs refer to the places in this list: new ways are added at its end.</summary>
    private static readonly (double Scale, double Divisor)[] Ways =
    [
        (1, 1), (10, 1), (100, 1), (1000, 1), (10000, 1), (1, 100), (10, 100), (100, 100), (1, 3.6), (10, 3.6), (100, 3.6), (1000, 3.6),
    ];

    public static void Write(PackWriter to, ReadOnlySpan<double> values)
    {
        var way = WayOf(values);
        to.Byte((byte)(way + 1));
        if (way < 0)
        {
            for (var place = 0; place < sizeof(double); place++)
            {
                foreach (var value in values) to.Byte((byte)(BitConverter.DoubleToInt64Bits(value) >> (8 * place)));
            }

            return;
        }

        var before = 0L;
        foreach (var value in values)
        {
            var number = NumberOf(value, Ways[way]);
            to.Signed(number - before);
            before = number;
        }
    }

    public static void Read(ref PackReader from, Span<double> values)
    {
        var way = from.Byte() - 1;
        if (way >= Ways.Length)
            throw new ForecastFormatException($"A kept forecast holds a column of kind {way + 1}; this program reads 0 to {Ways.Length}.");
        if (way < 0)
        {
            var bytes = from.Bytes(values.Length * sizeof(double));
            for (var i = 0; i < values.Length; i++)
            {
                var bits = 0L;
                for (var place = 0; place < sizeof(double); place++) bits |= (long)bytes[place * values.Length + i] << (8 * place);
                values[i] = BitConverter.Int64BitsToDouble(bits);
            }

            return;
        }

        var (scale, divisor) = Ways[way];
        var number = 0L;
        for (var i = 0; i < values.Length; i++)
        {
            number += from.Signed();
            values[i] = number / scale / divisor;
        }
    }

    /// <returns>The first that is exact for every value; −1: none.</returns>
    private static int WayOf(ReadOnlySpan<double> values)
    {
        for (var way = 0; way < Ways.Length; way++)
        {
            var exact = true;
            for (var i = 0; i < values.Length && exact; i++) exact = IsExact(values[i], Ways[way]);
            if (exact) return way;
        }

        return -1;
    }

    // Bit for bit, so that −0 stays what it was.
    private static bool IsExact(double value, (double Scale, double Divisor) way) =>
        Math.Abs(value * way.Divisor * way.Scale) < LargestExact
        && BitConverter.DoubleToInt64Bits(NumberOf(value, way) / way.Scale / way.Divisor) == BitConverter.DoubleToInt64Bits(value);

    private static long NumberOf(double value, (double Scale, double Divisor) way) => (long)Math.Round(value * way.Divisor * way.Scale);
}
