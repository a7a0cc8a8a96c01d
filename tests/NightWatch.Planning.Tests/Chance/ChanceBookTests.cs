using NightWatch.Planning.Chance;

namespace NightWatch.Planning.Tests.Chance;

public sealed class ChanceBookTests
{
    private static readonly ChanceKey Key = new("met-norway", 1);
    private static readonly ChanceNight[] Gloomy = GivenNights.Of(60, .4, .1);

    [Fact]
    public void Without_a_record_the_prior_stands_at_its_word() =>
        Assert.Equal(
            ChanceModel.OfPrior(ChancePrior.Shipped, 1).Of(GivenNights.Good),
            ChanceBook.Shipped.Of("met-norway", 1, "hill").Of(GivenNights.Good));

    [Fact]
    public void An_installation_that_has_learnt_nothing_doubts_its_prior_alike_at_every_place()
    {
        var start = ChanceLearning.Start(ChancePrior.Shipped, 1).ModelFor("hill");

        Assert.All(["hill", "moor"], place =>
            Assert.Equal(start.Of(GivenNights.Good), ChanceBook.Unlearnt.Of("met-norway", 1, place).Of(GivenNights.Good)));
    }

    [Fact]
    public void What_is_proven_counts_for_its_feed_and_lead_alone()
    {
        var learnt = GivenNights.Learnt(Key, 3, Gloomy);
        var book = new ChanceBook(ChancePrior.Shipped, [learnt]);

        Assert.Equal(learnt.Learning.ModelFor("hill").Of(GivenNights.Good), book.Of(Key.FeedId, 1, "hill").Of(GivenNights.Good));
        Assert.True(
            book.Of(Key.FeedId, 1, "hill").Of(GivenNights.Good) < ChanceBook.Unlearnt.Of(Key.FeedId, 1, "hill").Of(GivenNights.Good) - .1);
        Assert.Same(book.BeforeLearning(2), book.Of(Key.FeedId, 2, "hill"));
        Assert.Same(book.BeforeLearning(1), book.Of("nws", 1, "hill"));
    }

    [Fact]
    public void What_is_not_proven_is_known_and_not_used()
    {
        var learnt = GivenNights.Learnt(Key, 3, Gloomy) with { Proof = GivenNights.Proven with { Gain = .001 } };
        var book = new ChanceBook(ChancePrior.Shipped, [learnt]);

        Assert.Same(learnt, book.Find(Key));
        Assert.Same(book.BeforeLearning(1), book.Of(Key.FeedId, 1, "hill"));
    }

    [Fact]
    public void A_night_far_ahead_has_a_chance_too() =>
        Assert.InRange(ChanceBook.Unlearnt.Of("nws", 40, "hill").Of(GivenNights.Good), 0, 1);

    [Fact]
    public void Two_of_one_feed_and_lead_are_refused() => Assert.Throws<ArgumentException>(() =>
        new ChanceBook(ChancePrior.Shipped, [GivenNights.Learnt(Key, 1, []), GivenNights.Learnt(Key, 2, [])]));
}
