using NightWatch.Planning.Dew;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Power;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Nights;

/// <summary>One thing to take, with the figure that asks for it, and no words. Closed: these cases are all there are.</summary>
public abstract record PackItem
{
    private PackItem()
    {
    }

    /// <summary>Camera, lens, rail, tripod, timer.</summary>
    public sealed record Camera : PackItem;

    /// <summary>A head lamp with red light.</summary>
    public sealed record HeadLamp : PackItem;

    /// <summary>Room on the cards, GB, for so many frames, and how many GB more than the kit has; null: it has enough.</summary>
    public sealed record Cards(double FreeGb, int Shots, double? MoreGb) : PackItem;

    /// <summary>Packs by their labels, Wh, and how many Wh more for the whole run with a reserve; null: they are enough.</summary>
    public sealed record Batteries(IReadOnlyList<double> PacksWh, double? MoreWh) : PackItem;

    /// <summary>
    /// The dew heater, W, its own battery, Wh (null: it hangs on the camera's packs), and how many Wh more it takes; null: none.
    /// </summary>
    public sealed record Heater(double Watts, double? BatteryWh, double? MoreWh) : PackItem;

    /// <summary>In place of a dew heater.</summary>
    public sealed record HandWarmer : PackItem;

    /// <summary>For so much cold, °C; well below freezing more of it.</summary>
    public sealed record WarmClothes(double ColdestC, bool IsFreezing) : PackItem;

    /// <summary>Spares kept warm.</summary>
    public sealed record WarmSpares : PackItem;

    /// <summary>To hang from the tripod, for gusts, m/s.</summary>
    public sealed record Weight(double GustMps) : PackItem;

    /// <summary>For wet or damp ground.</summary>
    public sealed record Waterproofs(bool IsWet) : PackItem;

    /// <summary>Water, food, phone.</summary>
    public sealed record Provisions : PackItem;
}

/// <summary>What this night needs beyond the camera itself.</summary>
internal static class PackingList
{
    /// <summary>Empty without a run.</summary>
    public static IReadOnlyList<PackItem> Of(NightEvidence night, ShootingPlan? plan)
    {
        if (plan is null) return [];
        var items = new List<PackItem> { new PackItem.Camera(), new PackItem.HeadLamp() };
        var kit = night.Watch.Kit;
        if (plan.Sequence is { } sequence)
        {
            items.Add(
                new PackItem.Cards(
                    sequence.StorageGb,
                    sequence.Shots,
                    plan.Storage is { Full: not null } storage ? Math.Ceiling(storage.NeedGb - storage.RoomGb) : null));
        }

        var missing = PowerJudge.MissingWh(plan.Power);
        items.Add(new PackItem.Batteries(kit.BatteriesWh, missing > 0 ? Math.Ceiling(missing) : null));
        if (plan.Lens.Onset is not null || (plan.Lens.HeaterOn is not null && kit.DewHeaterW > 0))
            items.Add(kit.DewHeaterW > 0 ? HeaterItem(kit, plan) : new PackItem.HandWarmer());

        double coldest = double.PositiveInfinity, gust = double.NegativeInfinity;
        var (first, last) = (plan.Run.First, plan.Run.Last);
        for (var cell = first; cell <= last; cell++)
        {
            if (night.Weather.AirC[cell] < coldest) coldest = night.Weather.AirC[cell];
            if (night.Weather.GustMps[cell] > gust) gust = night.Weather.GustMps[cell];
        }

        if (coldest <= 10) items.Add(new PackItem.WarmClothes(coldest, coldest <= 0));
        if (coldest <= 5) items.Add(new PackItem.WarmSpares());
        if (gust >= night.Limits.GustMps.Caution) items.Add(new PackItem.Weight(gust));
        if (plan.Ground.AtStart is GroundState.Wet or GroundState.Damp)
            items.Add(new PackItem.Waterproofs(plan.Ground.AtStart == GroundState.Wet));
        items.Add(new PackItem.Provisions());
        return items;
    }

    private static PackItem.Heater HeaterItem(Kit kit, ShootingPlan plan) =>
        new(kit.DewHeaterW, kit.DewHeaterBatteryWh, plan.Power?.HeaterEmpty is null ? null : Math.Ceiling(DewJudge.MissingWh(plan.Power)));
}
