using NightWatch.Planning.Nights;

namespace NightWatch.Words;

// What to take.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Of(PackItem item, Speech speech) =>
        item switch
        {
            PackItem.Camera => "Camera, lens, rail, tripod, interval timer",
            PackItem.HeadLamp => "Head lamp with red light, and a spare",
            PackItem.Cards { MoreGb: { } more } i =>
                $"Cards with {speech.OneDecimal(i.FreeGb)} GB free for {i.Shots} frames: {speech.Number(more)} GB more than the kit has",
            PackItem.Cards i => $"Cards with {speech.OneDecimal(i.FreeGb)} GB free for {i.Shots} frames",
            PackItem.Batteries { MoreWh: { } more } i =>
                $"Charged batteries: {Labels(i, speech)} Wh, and {speech.Number(more)} Wh more for the whole run with a reserve",
            PackItem.Batteries i => $"Charged batteries: {Labels(i, speech)} Wh",
            PackItem.Heater i => Heater(i, speech),
            PackItem.HandWarmer => "A chemical hand warmer and a strap: there is no dew heater in the kit",
            PackItem.WarmClothes { IsFreezing: true } i =>
                $"Gloves, hat, insulated boots and layers: down to {speech.Units.Air(i.ColdestC)}",
            PackItem.WarmClothes i => $"Warm layers, gloves and a hat: down to {speech.Units.Air(i.ColdestC)}",
            PackItem.WarmSpares => "Spare batteries kept warm in a pocket; they give less in the cold",
            PackItem.Weight i => $"Weight to hang from the tripod: gusts to {Speed(i.GustMps, speech)}",
            PackItem.Waterproofs i => $"Waterproof boots, a ground sheet and a dry bag: the ground is {(i.IsWet ? "wet" : "damp")}",
            PackItem.Provisions => "Water, food, a charged phone; tell someone where you are and when you will be back",
            _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Accepted: one of the cases of a thing to take."),
        };

    private static string Labels(PackItem.Batteries i, Speech speech) => string.Join(" + ", i.PacksWh.Select(speech.Number));

    private static string Heater(PackItem.Heater i, Speech speech)
    {
        var battery = i.BatteryWh is { } own ? $"its battery of {speech.Number(own)} Wh" : "its lead to the camera's packs";
        var more = i.MoreWh is { } wh ? $", and {speech.Number(wh)} Wh more to last the night" : "";
        return $"Dew heater ({speech.Number(i.Watts)} W) and {battery}{more}";
    }
}
