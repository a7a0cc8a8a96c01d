using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Sky.Places;

namespace NightWatch.Pages.Watches;

/// <summary>From a watch to the fields of its form.</summary>
internal static class WatchFields
{
    public static FormValues Of(Watch watch)
    {
        var values = new FormValues();
        var tree = JsonSerializer.SerializeToNode(watch, WatchJson.Options)!.AsObject();
        foreach (var field in FormField.All)
        {
            var node = field.Path.Split('.').Aggregate((JsonNode?)tree, (at, name) => at?[name]);
            if (field.Kind == FieldKind.Ticks) values.Set(field.Path, [.. node!.AsArray().Select(item => item!.GetValue<string>())]);
            else if (field.Kind == FieldKind.Numbers) values[field.Path] = string.Join(", ", node!.AsArray().Select(item => Shown(item)));
            else if (field.Kind == FieldKind.Tick) values[field.Path] = node!.GetValue<bool>() ? "on" : "";
            else if (field.Kind == FieldKind.Percent) values[field.Path] = Figure(Math.Round(node!.GetValue<double>() * 100, 4));
            else values[field.Path] = Shown(node);
        }

        values["place"] = Coordinates(watch.Site.Position);
        if (watch.Outing is { HomeLatitudeDeg: { } latitude, HomeLongitudeDeg: { } longitude })
            values["home"] = FormattableString.Invariant($"{latitude}, {longitude}");
        var kit = watch.Kit;
        var key = SensorSizes.Key(kit.SensorWidthMm, kit.SensorHeightMm);
        values["sensor"] = SensorSizes.Usual.Any(size => SensorSizes.Key(size.WidthMm, size.HeightMm) == key) ? key : SensorSizes.Other;
        values["kit.sensorWidthMm"] = Figure(kit.SensorWidthMm);
        values["kit.sensorHeightMm"] = Figure(kit.SensorHeightMm);
        values["megapixels"] = Figure(Math.Round(kit.SensorWidthMm * kit.SensorHeightMm / (kit.PixelPitchUm * kit.PixelPitchUm), 1));
        foreach (var (name, node) in tree["subject"]!.AsObject()) values[$"subject.{name}"] = Shown(node);
        PutMove(values, tree["move"]);
        return values;
    }

    /// <summary>Side of a square pixel, micrometres.</summary>
    public static double PitchUm(double widthMm, double heightMm, double megapixels) => Math.Sqrt(widthMm * heightMm / megapixels);

    /// <summary>"-24.7553, 15.2905": a form that every notation reader knows.</summary>
    public static string Coordinates(GeoPosition position) =>
        FormattableString.Invariant($"{position.LatitudeDeg:0.######}, {position.LongitudeDeg:0.######}");

    private static void PutMove(FormValues values, JsonNode? move)
    {
        if (move is null) return;
        values["moves"] = "on";
        foreach (var end in (string[])["start", "end"])
        {
            foreach (var (name, node) in move[end]!.AsObject()) values[$"move.{end}.{name}"] = Shown(node);
        }

        foreach (var ease in (string[])["easeIn", "easeOut"]) values[$"move.{ease}"] = Figure(move[ease]!.GetValue<double>() * 100);
        values["move.railM"] = Shown(move["railM"]);
    }

    private static string Shown(JsonNode? node) =>
        node is null ? ""
        : node.GetValueKind() == JsonValueKind.String ? node.GetValue<string>()
        : node.ToJsonString();

    private static string Figure(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
