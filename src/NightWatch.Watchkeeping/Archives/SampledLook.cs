using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>What a look said to one question about a night, and what came.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Lead">Nights ahead.</param>
/// <param name="IsWatchs">The question is the watch's own.</param>
/// <param name="Figures">What was forecast.</param>
/// <param name="Usable">What came.</param>
/// <param name="Cloud">The newest run's cloud; null: not known, or the question is not the watch's.</param>
internal sealed record SampledLook(LocalDate Night, int Lead, bool IsWatchs, ChanceFigures Figures, bool Usable, DarkCloud? Cloud);

/// <summary>Cloud of the dark hours by whole hours, fractions: what simple rules and simple models go by.</summary>
/// <param name="Mean">Of all of them.</param>
/// <param name="BestMean">Of the clearest three in a row.</param>
/// <param name="Spread">Standard deviation between hours.</param>
internal readonly record struct DarkCloud(double Mean, double BestMean, double Spread)
{
    private const int BestHours = 3;

    /// <summary>Null where one hour is unknown, or there are fewer than three.</summary>
    public static DarkCloud? Of(IReadOnlyList<double>? hours)
    {
        if (hours is not { Count: >= BestHours }) return null;
        var mean = hours.Average();
        var best = Enumerable.Range(0, hours.Count - BestHours + 1).Min(first => hours.Skip(first).Take(BestHours).Average());
        return new DarkCloud(mean, best, Math.Sqrt(hours.Average(cloud => (cloud - mean) * (cloud - mean))));
    }
}
