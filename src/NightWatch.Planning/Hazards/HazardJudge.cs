using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Hazards;

/// <summary>
/// What can hurt people on the way and at the site. Thunder and wind have factors of their own; fatigue and cells are cautions of the plan,
/// not of the night.
/// </summary>
internal static class HazardJudge
{
    /// <param name="cautions">Of the outing, the worst first.</param>
    /// <returns>Null: none bears on the night.</returns>
    public static Reason? Of(IReadOnlyList<Caution> cautions)
    {
        var worst = cautions.FirstOrDefault(caution =>
            caution.Level == HazardLevel.Stop || (caution.Level == HazardLevel.Care && IsOfTheNight(caution.Kind)));
        return worst is null
            ? null
            : new InHarmsWay(worst.Level == HazardLevel.Stop ? Severity.Stop : Severity.Caution, worst)
            {
                Mend = worst.Level == HazardLevel.Stop ? null : new Mend.NightWithoutIt(),
            };
    }

    private static bool IsOfTheNight(HazardKind kind) =>
        kind is HazardKind.Flood or HazardKind.Cold or HazardKind.Heat or HazardKind.RoadIce or HazardKind.RoadFog;
}
