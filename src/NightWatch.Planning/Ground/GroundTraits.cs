using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Ground;

/// <summary>
/// How a kind of ground holds water. All values are engineering choices, set so that walking and kneeling agree with the words.
/// </summary>
/// <remarks>
/// The held amounts stay within the readily evaporable water of FAO-56 table 19 (sand 2 to 7, loam 8 to 11, clay 8 to 12 mm, from
/// memory) and a film of half a millimetre on rock; the daily shares within the 0.85 to 0.98 of Kohler and Linsley 1951 for soil, less
/// for open surfaces.
/// </remarks>
/// <param name="CapacityMm">More than this runs off at once.</param>
/// <param name="HeldMm">What does not drain, only dries.</param>
/// <param name="DrainHours">Time constant by which what is above <paramref name="HeldMm"/> drains.</param>
/// <param name="WetMm">From here up it wets boots and bags.</param>
/// <param name="DampMm">From here up it is damp to the hand.</param>
/// <param name="DailyShare">Share of a rain still there after a day, for rain of unknown hour.</param>
internal readonly record struct GroundTraits(
    double CapacityMm, double HeldMm, double DrainHours, double WetMm, double DampMm, double DailyShare)
{
    public static GroundTraits Of(GroundKind kind) => kind switch
    {
        GroundKind.Rock => new(0.8, 0.3, 0.5, 0.15, 0.03, 0.30),
        GroundKind.Gravel => new(4, 1.5, 1, 0.8, 0.2, 0.70),
        GroundKind.Sand => new(5, 2.5, 1.5, 1.5, 0.4, 0.75),
        GroundKind.Grass => new(4, 2, 3, 0.8, 0.2, 0.85),
        GroundKind.Clay => new(12, 8, 12, 3, 0.8, 0.92),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Accepted: rock, gravel, sand, grass, clay."),
    };
}
