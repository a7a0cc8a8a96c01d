using System.Text.Json;
using NightWatch.Planning.Chance;
using NightWatch.Store.Verdicts;

namespace NightWatch.Store.Tests.Verdicts;

public sealed class StoredFiguresTests
{
    private static readonly ForecastShape Newest = new(.5, -.2501, 1.6);

    public static TheoryData<ChanceFigures, string> Kept => new()
    {
        { new(Newest, null, 1.2, -.5, null), "[0.5,-0.2501,1.6,1.2,-0.5,null]" },
        { new(Newest, null, 1.2, 0, -.8), "[0.5,-0.2501,1.6,1.2,0,-0.8]" },
        { new(Newest, new(2.7081, .1, .2), 2, 3, null), "[0.5,-0.2501,1.6,2,3,null,2.7081,0.1,0.2]" },
    };

    [Theory]
    [MemberData(nameof(Kept))]
    public void Figures_are_a_short_list_of_numbers_and_come_back(ChanceFigures figures, string text)
    {
        Assert.Equal(text, StoredFigures.Write(figures));
        Assert.Equal(figures, StoredFigures.Read(text));
    }

    [Fact]
    public void Four_decimals_are_kept() =>
        Assert.StartsWith(
            "[0.3333,", StoredFigures.Write(new(Newest with { Share = 1.0 / 3 }, null, 0, 0, null)), StringComparison.Ordinal);

    [Theory]
    [InlineData("[0.5,0,1]", "3 numbers")]
    [InlineData("[0.5,null,1.6,1.2,0,null]", "place 2")]
    [InlineData("[0.5,0,1.6,1e300,0,null]", "place 4")]
    public void A_list_that_cannot_be_is_refused(string text, string named) =>
        Assert.Contains(named, Assert.Throws<JsonException>(() => StoredFigures.Read(text)).Message, StringComparison.Ordinal);
}
