using NightWatch.Planning.Ground;
using NightWatch.Planning.Judging;
using NightWatch.Planning.Judging.Factors;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Nights;

/// <summary>What this night needs beyond the camera itself, with the figure that asks for it.</summary>
internal static class PackingList
{
    /// <summary>Empty without a run.</summary>
    public static IReadOnlyList<string> Of(NightEvidence night, ShootingPlan? plan)
    {
        if (plan is null) return [];
        var items = new List<string> { "Camera, lens, rail, tripod, interval timer", "Head lamp with red light, and a spare" };
        var kit = night.Watch.Kit;
        if (plan.Sequence is { } sequence)
        {
            var more = plan.Storage is { Full: not null } storage ? $": {Math.Ceiling(storage.NeedGb - storage.RoomGb):0} GB more than the kit has" : "";
            items.Add($"Cards with {Said.OneDecimal(sequence.StorageGb)} GB free for {sequence.Shots} frames{more}");
        }

        var missing = PowerFactor.Missing(plan);
        items.Add($"Charged batteries: {string.Join(" + ", kit.BatteriesWh.Select(Said.Number))} Wh" + (missing > 0 ? $", and {Math.Ceiling(missing):0} Wh more for the whole run with a reserve" : ""));
        if (plan.Lens.Onset is not null || (plan.Lens.HeaterOn is not null && kit.DewHeaterW > 0))
            items.Add(kit.DewHeaterW > 0 ? HeaterItem(kit, plan) : "A chemical hand warmer and a strap: there is no dew heater in the kit");

        double coldest = double.PositiveInfinity, gust = double.NegativeInfinity;
        var (first, last) = (plan.Run.First, plan.Run.Last);
        for (var cell = first; cell <= last; cell++)
        {
            if (night.Weather.AirC[cell] < coldest) coldest = night.Weather.AirC[cell];
            if (night.Weather.GustMps[cell] > gust) gust = night.Weather.GustMps[cell];
        }

        if (coldest <= 10)
            items.Add($"{(coldest <= 0 ? "Gloves, hat, insulated boots and layers" : "Warm layers, gloves and a hat")}: down to {Said.Number(coldest)} °C");
        if (coldest <= 5) items.Add("Spare batteries kept warm in a pocket; they give less in the cold");
        if (gust >= night.Limits.GustMps.Caution) items.Add($"Weight to hang from the tripod: gusts to {Said.Number(gust)} m/s");
        if (plan.Ground.AtStart is GroundState.Wet or GroundState.Damp)
            items.Add($"Waterproof boots, a ground sheet and a dry bag: the ground is {(plan.Ground.AtStart == GroundState.Wet ? "wet" : "damp")}");
        items.Add("Water, food, a charged phone; tell someone where you are and when you will be back");
        return items;
    }

    private static string HeaterItem(Kit kit, ShootingPlan plan)
    {
        var battery = kit.DewHeaterBatteryWh is { } own ? $"its battery of {Said.Number(own)} Wh" : "its lead to the camera's packs";
        var missing = plan.Power?.HeaterEmpty is null ? "" : $", and {Math.Ceiling(DewFactor.MissingWh(plan)):0} Wh more to last the night";
        return $"Dew heater ({Said.Number(kit.DewHeaterW)} W) and {battery}{missing}";
    }
}
