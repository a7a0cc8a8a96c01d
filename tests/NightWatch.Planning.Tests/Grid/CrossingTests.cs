using NightWatch.Planning.Grid;

namespace NightWatch.Planning.Tests.Grid;

public sealed class CrossingTests
{
    [Fact]
    public void A_level_is_passed_on_the_straight_line_between_samples()
    {
        Assert.Equal(450, Crossing.FirstAtOrBelow([3, 2, 1, 0], 1.5, 300));
        Assert.Equal(450, Crossing.FirstAtOrAbove([0, 1, 2, 3], 1.5, 300));
    }

    [Fact]
    public void A_series_that_begins_past_the_level_passes_at_once() => Assert.Equal(0, Crossing.FirstAtOrBelow([1, 5], 2, 300));

    [Fact]
    public void Unknown_samples_pass_nothing()
    {
        Assert.Null(Crossing.FirstAtOrBelow([3, double.NaN, 3], 2, 300));
        Assert.Equal(600, Crossing.FirstAtOrBelow([3, double.NaN, 1], 2, 300));
    }

    [Fact]
    public void Looking_from_a_later_sample_skips_the_earlier() =>
        Assert.Equal(900, Crossing.FirstAtOrBelow([1, 3, 3, 2], 2, 300, from: 1));
}
