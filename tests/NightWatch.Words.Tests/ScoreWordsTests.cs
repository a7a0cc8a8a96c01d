using NightWatch.Planning.Verification.Expenses;

namespace NightWatch.Words.Tests;

public sealed class ScoreWordsTests
{
    private static readonly English Language = English.Instance;

    [Theory]
    [InlineData(3, 81, 567, 560, "3 watches, 81 nights, 567 looks made again in 2.8 s: 560 come out the same, 7 do not.")]
    [InlineData(1, 1, 2, 1, "1 watch, 1 night, 2 looks made again in 2.8 s: 1 comes out the same, 1 does not.")]
    public void A_replay_is_counted(int watches, int nights, int looks, int same, string words) =>
        Assert.Equal(words, Language.ReplayHeading(watches, nights, looks, same, TimeSpan.FromSeconds(2.84)));

    [Theory]
    [InlineData(1, "1 look cannot be made again: its forecast is not kept any more. Database:KeepReplayDays keeps them.")]
    [InlineData(2, "2 looks cannot be made again: their forecasts are not kept any more. Database:KeepReplayDays keeps them.")]
    public void Lost_looks_are_counted(int looks, string words) => Assert.Equal(words, Language.LooksLost(looks));

    [Theory]
    [InlineData(0, "the day")]
    [InlineData(1, "1 night")]
    [InlineData(5, "5 nights")]
    public void A_lead_is_short_in_a_table(int lead, string words) => Assert.Equal(words, Language.AheadCell(lead));

    [Fact]
    public void Every_remark_on_an_archive_counts_one_and_many() => Assert.All(Enum.GetValues<ArchiveRemark>(), remark =>
    {
        Assert.Matches("^1 (night|look) ", Language.Of(remark, 1));
        Assert.Matches("^7 (nights|looks) ", Language.Of(remark, 7));
    });

    [Fact]
    public void Letters_over_an_archive_are_counted() =>
        Assert.Equal(
            "Letters, by every pass from the third evening before: 30 sent, 2 of them reversals; 1 night told on that failed unwarned, 4 " +
            "usable nights never told.",
            Language.Of(new LetterScores(30, 2, 1, 4)));

    [Fact]
    public void Nobody_recorded_is_no_span_of_nights() =>
        Assert.Equal(
            "dunes, moor: nothing is recorded yet.",
            Language.ScoresHeading(["dunes", "moor"], null, 0, 0, new Dictionary<string, int>(), Speech.ToAnybody));
}
