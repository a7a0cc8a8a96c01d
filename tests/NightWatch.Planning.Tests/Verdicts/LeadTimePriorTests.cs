using CsCheck;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Tests.Verdicts;

public sealed class LeadTimePriorTests
{
    /// <summary>Ye and Chen 2013, MNRAS 428, 3288 (abstract): 73 % falling to 58 % over 180 h.</summary>
    [Theory]
    [InlineData(0, 0.73)]
    [InlineData(180, 0.58)]
    [InlineData(90, 0.655)] // half-way on the straight line
    [InlineData(-3, 0.73)]
    [InlineData(400, 0.58)]
    public void Share_of_small_errors_matches_the_published_skill(double hours, double share) =>
        Assert.Equal(share, LeadTimePrior.SmallErrorShare(hours), 12);

    [Fact]
    public void The_error_distribution_holds_the_published_share_within_thirty_per_cent() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 180]).Sample((cloud, hours) =>
        {
            var inside = LeadTimePrior.CloudBelow(cloud, cloud + 0.3, hours) - LeadTimePrior.CloudBelow(cloud, cloud - 0.3, hours);
            return Math.Abs(inside - LeadTimePrior.SmallErrorShare(hours)) < 1e-9;
        });

    [Fact]
    public void More_forecast_cloud_never_raises_the_chance() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 240]).Sample((a, b, hours) =>
            LeadTimePrior.CloudBelow(Math.Max(a, b), 0.45, hours) <= LeadTimePrior.CloudBelow(Math.Min(a, b), 0.45, hours));

    [Fact]
    public void Cloud_on_the_limit_is_even_chances_at_any_lead() =>
        Gen.Double[0, 240].Sample(hours => LeadTimePrior.CloudBelow(0.45, 0.45, hours) == 0.5);
}
