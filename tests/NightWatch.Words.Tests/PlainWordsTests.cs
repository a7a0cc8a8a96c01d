using CsCheck;

namespace NightWatch.Words.Tests;

public sealed class PlainWordsTests
{
    [Theory]
    [InlineData("a\r\nBcc: b", "a Bcc: b")]
    [InlineData("\u202Etxt\u2069", "txt")] // UAX #9, explicit directional characters
    [InlineData("  a \t b  ", "a b")]
    [InlineData("🌌 رصيف", "🌌 رصيف")]
    public void A_line_is_one_line(string text, string line) => Assert.Equal(line, PlainWords.OneLine(text));

    [Fact]
    public void Any_text_becomes_one_line_without_controls() => Gen.String.Sample(text =>
    {
        var line = PlainWords.OneLine(text);
        Assert.DoesNotContain(line, char.IsControl);
        Assert.Equal(line, PlainWords.OneLine(line));
    });

    [Fact]
    public void A_family_of_joined_people_is_never_cut_in_two() => Assert.Equal("👨‍👩‍👧a…", PlainWords.Shortened("👨‍👩‍👧abc", 3));
}
