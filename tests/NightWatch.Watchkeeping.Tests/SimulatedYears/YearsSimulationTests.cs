using System.Globalization;
using NightWatch.Planning.Verdicts;
using NightWatch.Watchkeeping.Photographers;
using NightWatch.Watchkeeping.SimulatedYears;
using NightWatch.Weather.Fake;

namespace NightWatch.Watchkeeping.Tests.SimulatedYears;

public sealed class YearsSimulationTests
{
    [Fact]
    public void The_same_seed_gives_the_same_nights_on_any_number_of_threads_and_another_others()
    {
        var two = Text(Run(seed: 3, sites: 2));
        var one = Text(Run(seed: 3, sites: 1));
        Assert.NotEmpty(one);
        Assert.Equal(one, two[..one.Count]);
        Assert.NotEqual(one, Text(Run(seed: 4, sites: 1)));
        Assert.NotEqual(one, Text(Run(seed: 3, sites: 1, ClimateKind.DryDesert)));
    }

    [Fact]
    public void Every_night_has_its_four_looks_and_a_letter_behind_each_drive()
    {
        var nights = Run(seed: 3, sites: 2);
        Assert.NotEmpty(nights);
        Assert.All(nights, night =>
        {
            Assert.Equal(Photographer.LeadNights + 1, night.Looks.Count);
            Assert.All(night.Looks, look => Assert.InRange(look.Probability.Value, 0, 1));
            Assert.All(night.Looks, look => Assert.InRange(look.DarkCloud!.Value, 0, 1));
            Assert.True(!night.Letters.OnAtLast || night.Letters.Sent > 0);
        });
        Assert.Contains(nights, night => night.Letters.OnAtLast);
        Assert.Contains(nights, night => night.Came == VerdictClass.NoGo);
    }

    [Fact]
    public void More_sites_begin_with_the_fewer()
    {
        Assert.Equal(
            SimulatedSites.Of(9, 3).Select(watch => watch.Site.Position),
            SimulatedSites.Of(9, 8).Take(3).Select(watch => watch.Site.Position));
        Assert.All(SimulatedSites.Of(9, 50), watch => Assert.InRange(watch.Site.Position.LatitudeDeg, -48, 48));
    }

    private static IReadOnlyList<SimulatedNight> Run(int seed, int sites, ClimateKind climate = ClimateKind.SemiAridHighPlain) =>
        new YearsSimulation(climate, seed, nightsASite: 75, sites, every: 12, members: 0, _ => { }).Run(
            TestContext.Current.CancellationToken);

    private static List<string> Text(IEnumerable<SimulatedNight> nights) =>
        [
            .. nights.Select(night =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{night.Site} {night.Night:R} {night.Came} {night.Letters} " +
                    $"{string.Join(' ', night.Looks.Select(look => (look.Class, look.Probability.Value, look.DarkCloud)))}")),
        ];
}
