using NightWatch.Planning.Nights;

namespace NightWatch.Words;

// What to take.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Of(PackItem item, Speech s) => item switch
    {
        PackItem.Camera => "Camera, lens, rail, tripod, interval timer",
        PackItem.HeadLamp => "Head lamp with red light, and a spare",
        PackItem.Cards { MoreGb: { } more } i => $"Cards with {s.OneDecimal(i.FreeGb)} GB free for {i.Shots} frames: {s.Number(more)} GB more than the kit has",
        PackItem.Cards i => $"Cards with {s.OneDecimal(i.FreeGb)} GB free for {i.Shots} frames",
        PackItem.Batteries { MoreWh: { } more } i => $"Charged batteries: {Labels(i, s)} Wh, and {s.Number(more)} Wh more for the whole run with a reserve",
        PackItem.Batteries i => $"Charged batteries: {Labels(i, s)} Wh",
        PackItem.Heater i => Heater(i, s),
        PackItem.HandWarmer => "A chemical hand warmer and a strap: there is no dew heater in the kit",
        PackItem.WarmClothes { IsFreezing: true } i => $"Gloves, hat, insulated boots and layers: down to {s.Units.Air(i.ColdestC)}",
        PackItem.WarmClothes i => $"Warm layers, gloves and a hat: down to {s.Units.Air(i.ColdestC)}",
        PackItem.WarmSpares => "Spare batteries kept warm in a pocket; they give less in the cold",
        PackItem.Weight i => $"Weight to hang from the tripod: gusts to {Speed(i.GustMps, s)}",
        PackItem.Waterproofs i => $"Waterproof boots, a ground sheet and a dry bag: the ground is {(i.IsWet ? "wet" : "damp")}",
        PackItem.Provisions => "Water, food, a charged phone; tell someone where you are and when you will be back",
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Accepted: one of the cases of a thing to take."),
    };

    private static string Labels(PackItem.Batteries i, Speech s) => string.Join(" + ", i.PacksWh.Select(s.Number));

    private static string Heater(PackItem.Heater i, Speech s)
    {
        var battery = i.BatteryWh is { } own ? $"its battery of {s.Number(own)} Wh" : "its lead to the camera's packs";
        var more = i.MoreWh is { } wh ? $", and {s.Number(wh)} Wh more to last the night" : "";
        return $"Dew heater ({s.Number(i.Watts)} W) and {battery}{more}";
    }
}
