using System.Text;
using NightWatch.Words.Documents;
using NodaTime;

namespace NightWatch.Words.Tests.Documents;

public sealed class CsvTests
{
    // RFC 4180, section 2, rules 5 to 7 and their examples.
    [Theory]
    [InlineData("aaa", "aaa")]
    [InlineData("b\r\nbb", "\"b\r\nbb\"")]
    [InlineData("b\"bb", "\"b\"\"bb\"")]
    [InlineData("b,bb", "\"b,bb\"")]
    [InlineData("", "")]
    [InlineData(" a ", " a ")] // rule 4: spaces belong to the field
    public void A_field_is_quoted_only_where_it_must_be(string field, string written) =>
        Assert.Equal($"name\r\n{written}\r\n", Written(field));

    [Fact]
    public void What_is_not_known_is_an_empty_field_and_never_zero() => Assert.Equal("name\r\n\r\n", Written(null));

    [Fact]
    public void Figures_and_times_are_written_as_other_programs_read_them()
    {
        Assert.Equal("name\r\n0.125\r\n", Written(0.125));
        Assert.Equal("name\r\n-3\r\n", Written(-3));
        Assert.Equal("name\r\n2027-06-04\r\n", Written(new LocalDate(2027, 6, 4)));
        Assert.Equal("name\r\n2027-06-04T18:05:00.000Z\r\n", Written(Instant.FromUtc(2027, 6, 4, 18, 5)));
    }

    private static string Written(object? field) => Encoding.UTF8.GetString(Csv.Write(["name"], [[field]]));
}
