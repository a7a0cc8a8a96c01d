using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Planning.Tests.Chance;

public sealed class LearningProofTests
{
    // By hand: gains of five fortnights .02 .04 .06 .08 .10, mean .06, deviation .031623, error .014142; t(4) = 2.132.
    [Fact]
    public void Fortnights_are_compared_and_not_nights()
    {
        var nights = Enumerable.Range(0, 70).Select(day => Errors(day, .3, .28 - day / 14 * .02)).ToArray();

        var proof = LearningProof.Of(nights);

        Assert.Equal((70, 5), (proof.Nights, proof.Blocks));
        Assert.Equal(.3, proof.StartBrier, 12);
        Assert.Equal(.24, proof.LearntBrier, 12);
        Assert.Equal(.06, proof.Gain, 12);
        Assert.Equal(Math.Sqrt(.004 / 4 / 5), proof.GainError!.Value, 12);
        Assert.True(proof.IsProven);
    }

    [Theory]
    [InlineData(70, true)]
    [InlineData(56, false)] // four fortnights
    public void Less_than_five_fortnights_prove_nothing(int nights, bool proven) =>
        Assert.Equal(
            proven, LearningProof.Of([.. Enumerable.Range(0, nights).Select(day => Errors(day, .3, .2 + day % 2 * .01))]).IsProven);

    [Fact]
    public void Few_nights_over_many_fortnights_prove_nothing() =>
        Assert.False(LearningProof.Of([.. Enumerable.Range(0, 29).Select(week => Errors(7 * week, .3, .2 + week % 2 * .01))]).IsProven);

    [Fact]
    public void A_gain_that_comes_and_goes_is_not_proven() =>
        Assert.False(LearningProof.Of([.. Enumerable.Range(0, 140).Select(day => Errors(day, .3, day / 14 % 2 == 0 ? .2 : .38))]).IsProven);

    [Fact]
    public void The_same_chances_are_no_better() =>
        Assert.False(LearningProof.Of([.. Enumerable.Range(0, 140).Select(day => Errors(day, .3, .3))]).IsProven);

    // Fortnights counted from 2000-01-01, ten in turn: by hand.
    [Theory]
    [InlineData("2000-01-01", 0)]
    [InlineData("2000-01-15", 1)]
    [InlineData("2000-05-20", 0)]
    [InlineData("1999-12-31", 9)]
    public void Fortnights_are_dealt_out_in_turn(string night, int block) =>
        Assert.Equal(block, LearningProof.BlockOf(NodaTime.Text.LocalDatePattern.Iso.Parse(night).Value));

    // The first day of a fortnight.
    private static NightErrors Errors(int day, double start, double learnt) =>
        new(new LocalDate(2000, 1, 1).PlusDays(14 * 700 + day), start, learnt);
}
