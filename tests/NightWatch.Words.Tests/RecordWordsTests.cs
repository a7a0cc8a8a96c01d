using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Calls;
using NodaTime;

namespace NightWatch.Words.Tests;

public sealed class RecordWordsTests
{
    // 17 of 21 by Wilson 1927, 95 %: 0.600 to 0.923 (computed by hand from the formula).
    [Theory]
    [InlineData(
        VerdictClass.Go,
        2,
        "Calls like this one (go, 2 nights ahead) were right 17 of 21 times: 81 %, and by chance anything from 60 to 92 %.")]
    [InlineData(
        VerdictClass.NoGo,
        0,
        "Calls like this one (no-go, on the day) were right 17 of 21 times: 81 %, and by chance anything from 60 to 92 %.")]
    [InlineData(
        VerdictClass.Marginal,
        1,
        "Nights like this one (marginal, 1 night ahead) came usable 17 of 21 times: 81 %, and by chance anything from 60 to 92 %.")]
    [InlineData(
        VerdictClass.Go,
        null,
        "Calls like this one (go, on the last look before the night) were right 17 of 21 times: 81 %, and by chance anything from 60 to " +
        "92 %."
    )]
    public void Earlier_calls_are_told_with_their_count_and_no_more_than_it_can_bear(VerdictClass said, int? lead, string words) =>
        Assert.Equal(words, Speech.Metric(DateTimeZone.Utc).Of(new LikeCalls(said, lead, new Rate(17, 21))));
}
