using NightWatch.Planning.Chance;
using NightWatch.Watchkeeping.Archives;

namespace NightWatch.Watchkeeping.Tests.Archives;

/// <summary>The prior that comes with the program, where it is wrong: how much worse than climate it is until it has learnt.</summary>
public sealed class LearningTrialTests
{
    private const int Nights = 90;
    private const int Apart = 40;
    private static Range[] Parts => [0..10, 10..30, 30..Nights];

    private const string Place = "site";

    [Theory]
    [InlineData("cloudier")]
    [InlineData("clearer")]
    [InlineData("tucson")]
    [InlineData("useless")]
    public void A_feed_or_climate_that_the_prior_was_not_made_for_costs_little_and_not_for_long(string weather)
    {
        for (var lead = 0; lead <= 3; lead++)
        {
            var excess = Excess(lead, LooksAt(weather, lead));
            var told = $"{weather}, lead {lead}: " + string.Join(
                ", ", Parts.Select(part => FormattableString.Invariant($"{excess[part].Average():0.000}")));
            TestContext.Current.TestOutputHelper?.WriteLine(told);
            Assert.True(Parts.Zip([0.06, 0.02, 0.01]).All(part => excess[part.First].Average() <= part.Second), told);
        }
    }

    private static SampledLook[] LooksAt(string weather, int lead)
    {
        var rows = weather == "useless" ? NewYork.Looks : NewYork.Rows(weather);
        SampledLook[] own = [.. rows.Where(look => look.IsWatchs && look.Lead == lead).OrderBy(look => look.Night)];
        // A night gets what was said of one about ten months away; its own length and Moon are known all the same.
        return weather != "useless" ? own
            : [.. own.Select((look, i) => look with { Figures = Other(i) with { Room = look.Figures.Room } })];

        ChanceFigures Other(int i) => own[(i + own.Length / 2) % own.Length].Figures;
    }

    // By how much the squared error is greater than that of always saying the usable share, night by night, the mean over many beginnings.
    private static double[] Excess(int lead, SampledLook[] looks)
    {
        var climate = looks.Average(look => look.Usable ? 1.0 : 0);
        var (sums, starts) = (new double[Nights], 0);
        for (var first = 0; first + Nights <= looks.Length; first += Apart, starts++)
        {
            var learnt = ChanceLearning.Start(ChancePrior.Shipped, lead);
            for (var night = 0; night < Nights; night++)
            {
                var look = looks[first + night];
                var came = look.Usable ? 1 : 0;
                var said = learnt.ModelFor(Place).Of(look.Figures);
                sums[night] += (said - came) * (said - came) - (climate - came) * (climate - came);
                learnt = learnt.After([new ChanceRow(Place, look.Figures, look.Usable)]);
            }
        }

        return [.. sums.Select(sum => sum / starts)];
    }
}
