using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;

namespace NightWatch.Planning.Tests.Verification.Outcomes;

public sealed class OutcomeWordsTests
{
    [Fact]
    public void Every_outcome_is_read_back_from_its_word() =>
        Assert.All(Enum.GetValues<NightOutcome>(), outcome => Assert.Equal(outcome, OutcomeWords.Of(outcome.Word())));

    [Theory]
    [InlineData("")]
    [InlineData("Clear")]
    [InlineData("0")]
    [InlineData(null)]
    public void Any_other_word_is_no_outcome(string? word) => Assert.Null(OutcomeWords.Of(word));

    [Theory]
    [InlineData(NightOutcome.Clear, VerdictClass.Go)]
    [InlineData(NightOutcome.Partly, VerdictClass.Marginal)]
    [InlineData(NightOutcome.WetLens, VerdictClass.Marginal)]
    [InlineData(NightOutcome.Cloudy, VerdictClass.NoGo)]
    public void An_outcome_says_which_class_came(NightOutcome outcome, VerdictClass came) => Assert.Equal(came, outcome.Came());

    [Fact]
    public void Who_stayed_at_home_cannot_say_what_came() => Assert.Null(NightOutcome.Stayed.Came());
}
