using NightWatch.Planning.Chance;

namespace NightWatch.Planning.Tests.Chance;

public sealed class LearningCourseTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void What_is_said_of_a_night_knows_the_nights_over_when_the_look_was_made_and_no_other(int lead)
    {
        var nights = GivenNights.Of(12, .3, .1);

        var course = LearningCourse.Of(ChancePrior.Shipped, lead, nights);

        // Three nights ahead on the 10th the night of the 9th is over and that of the 10th is not: said of the 13th.
        for (var i = 0; i < nights.Length; i++)
        {
            var known = nights
                .Take(Math.Max(0, i - lead))
                .Aggregate(ChanceLearning.Start(ChancePrior.Shipped, lead), (all, night) => all.After(night.Rows));
            Assert.Equal(known.ModelFor("hill").Of(nights[i].Rows[0].Figures), Assert.Single(course.Said[i]));
        }

        Assert.Equal(nights.Length, course.Learning.Nights);
    }

    [Fact]
    public void A_record_that_contradicts_the_prior_draws_it_away_and_is_proven()
    {
        var course = LearningCourse.Of(ChancePrior.Shipped, 0, GivenNights.Of(200, .25, .05));

        Assert.True(course.Proof.IsProven);
        Assert.True(course.Proof.LearntBrier < course.Proof.StartBrier);
        Assert.InRange(course.Learning.ModelFor("hill").Of(GivenNights.Good), .15, .4);
    }

    [Fact]
    public void Few_nights_prove_nothing_however_clear_they_are() =>
        Assert.False(LearningCourse.Of(ChancePrior.Shipped, 0, GivenNights.Of(29, 0, 0)).Proof.IsProven);

    [Fact]
    public void No_night_teaches_nothing()
    {
        var course = LearningCourse.Of(ChancePrior.Shipped, 2, []);

        Assert.Equal((0, 0, false), (course.Learning.Nights, course.Proof.Nights, course.Proof.IsProven));
    }

    [Fact]
    public void Nights_out_of_order_are_refused() =>
        Assert.Throws<ArgumentException>(() => LearningCourse.Of(ChancePrior.Shipped, 0, [.. GivenNights.Of(3, .5, .5).Reverse()]));
}
