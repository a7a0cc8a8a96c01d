using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Planning.Tests.Chance;

/// <summary>Invented records.</summary>
internal static class GivenNights
{
    public static readonly LocalDate First = new(2026, 8, 1);

    public static readonly Instant Now = Instant.FromUtc(2027, 6, 1, 0, 0);

    /// <summary>Every second night a good forecast and a bad one, of which as many come usable as is given, evenly spread.</summary>
    public static ChanceNight[] Of(int count, double goodComes, double badComes, string place = "hill") =>
    [
        .. from day in Enumerable.Range(0, count)
           let isGood = day % 2 == 0
           let share = isGood ? goodComes : badComes
           let usable = Math.Floor((day / 2 + 1) * share + 1e-9) > Math.Floor(day / 2 * share + 1e-9)
           select new ChanceNight(First.PlusDays(day), [new ChanceRow(place, isGood ? Good : Bad, usable)]),
    ];

    public static ChanceFigures Good { get; } = Figures(300, .95);

    public static ChanceFigures Bad { get; } = Figures(20, .2);

    public static LearntChance Learnt(ChanceKey key, int version, ChanceNight[] nights) => new()
    {
        For = key,
        Version = version,
        LearntAt = Now,
        Learning = LearningCourse.Of(ChancePrior.Shipped, key.Lead, nights).Learning,
        Proof = Proven,
        Sources = new Dictionary<string, int> { ["debrief"] = nights.Length },
    };

    public static LearningProof Proven { get; } = new(80, .2, .17, .03, .01, 8);

    private static ChanceFigures Figures(double usableMin, double stretch)
    {
        var run = new ForecastFigures(usableMin, usableMin + 30, stretch, 3, .1);
        return ChanceFigures.Of(run, [new AgedForecast(run, 6)], 90, 400);
    }
}
