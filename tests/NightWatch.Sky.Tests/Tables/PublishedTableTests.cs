using System.Security.Cryptography;
using System.Text;
using NightWatch.Sky.Tables;

namespace NightWatch.Sky.Tests.Tables;

public sealed class PublishedTableTests
{
    private static readonly byte[] Table = Encoding.ASCII.GetBytes("# two terms\na\t1.5e-3\nb\t-2\n");

    private static string Digest(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    [Fact]
    public void Rows_are_split_and_comments_left_out()
    {
        var rows = PublishedTable.Parse("terms", Table, 2, Digest(Table));
        Assert.Equal(["a", "b"], rows.Select(row => row[0]));
        Assert.Equal([0.0015, -2], rows.Select(row => PublishedTable.Number(row[1])));
    }

    [Fact]
    public void A_changed_byte_is_refused()
    {
        byte[] changed = [.. Table];
        changed[^2] ^= 1;
        Assert.Contains(
            "digest", Assert.Throws<InvalidDataException>(() => PublishedTable.Parse("terms", changed, 2, Digest(Table))).Message);
    }

    [Fact]
    public void A_missing_row_is_refused() =>
        Assert.Contains(
            "2 rows; expected 3",
            Assert.Throws<InvalidDataException>(() => PublishedTable.Parse("terms", Table, 3, Digest(Table))).Message);

    [Fact]
    public void A_missing_table_is_named() =>
        Assert.Contains("no-such.tsv", Assert.Throws<InvalidDataException>(() => PublishedTable.Rows("no-such.tsv", 1, "")).Message);

    [Fact]
    public void A_series_sums_its_terms_and_their_rates()
    {
        // Seven terms, so that the last vector of four is not full
        var terms = Enumerable.Range(1, 7).Select(i => new[] { 1.0 / i, 0.3 * i, -0.7 * i, 0.01 * i }).ToArray();
        var series = new HarmonicSeries(terms);
        const double t = 1.7;
        Assert.Equal(7, series.Count);
        Assert.Equal(terms.Sum(a => a[0] * Math.Sin(a[1] + a[2] * t + a[3] * t * t)), series.At(t), 14);
        var (value, rate) = series.WithRateAt(t);
        Assert.Equal(series.At(t), value, 14);
        Assert.Equal(terms.Sum(a => a[0] * (a[2] + 2 * a[3] * t) * Math.Cos(a[1] + a[2] * t + a[3] * t * t)), rate, 14);
    }
}
