using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;

namespace NightWatch.Planning.Tests.Verification.Outcomes;

public sealed class OutcomeWordsTests
{
    [Fact]
    public void Every_answer_is_read_back_from_its_word()
    {
        Assert.All(
            Enum.GetValues<NightOutcome>().Where(outcome => outcome != NightOutcome.NotTold),
            outcome => Assert.Equal(outcome, OutcomeWords.Of(outcome.Word())));
        Assert.Equal(Enum.GetValues<NightOutcome>().Length - 1, OutcomeWords.All.Count);
    }

    [Fact]
    public void That_a_witness_does_not_tell_is_no_answer_and_says_nothing_of_what_came()
    {
        Assert.Null(OutcomeWords.Of(NightOutcome.NotTold.Word()));
        Assert.Null(NightOutcome.NotTold.Came());
    }

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
