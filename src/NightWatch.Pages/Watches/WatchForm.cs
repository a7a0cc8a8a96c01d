using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Places.Notations;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;

namespace NightWatch.Pages.Watches;

/// <summary>A watch as a form: what its fields hold, and what is wrong with them.</summary>
/// <param name="Values">As typed.</param>
/// <param name="Faults">One sentence by field.</param>
public sealed record WatchForm(FormValues Values, IReadOnlyDictionary<string, string> Faults)
{
    /// <summary>The fields of a watch that is there.</summary>
    public static WatchForm Of(Watch watch) => new(WatchFields.Of(watch), new Dictionary<string, string>());

    /// <summary>Reads a form over a watch: what the form does not hold stays as it is there.</summary>
    /// <returns>The watch, or null and the form with its faults.</returns>
    public static (Watch? Watch, WatchForm Form) Read(Watch before, FormValues values)
    {
        var faults = new Dictionary<string, string>();
        var tree = JsonSerializer.SerializeToNode(before, WatchJson.Options)!.AsObject();
        foreach (var field in FormField.All) Put(tree, field, values, faults);
        PutPlace(tree, values, faults);
        PutHome(tree, values, faults);
        PutSensor(tree, values, faults);
        tree["subject"] = Subject(values);
        tree["move"] = values.IsOn("moves") ? Move(values) : null;
        var reading = WatchFile.Read(tree.ToJsonString(WatchJson.Options), "form");
        foreach (var fault in reading.Faults) faults.TryAdd(FieldOf(fault.Field), Capital(fault.Message));
        return (faults.Count == 0 ? reading.Value : null, new WatchForm(values, faults));
    }

    /// <summary>A watch with the subject that a form names; null: it names none.</summary>
    public static Watch? WithSubject(Watch watch, FormValues values)
    {
        var tree = JsonSerializer.SerializeToNode(watch, WatchJson.Options)!.AsObject();
        tree["subject"] = Subject(values);
        return WatchFile.Read(tree.ToJsonString(WatchJson.Options), "form").Value;
    }

    private static void Put(JsonObject tree, FormField field, FormValues values, Dictionary<string, string> faults)
    {
        var typed = values[field.Path];
        switch (field.Kind)
        {
            case FieldKind.Tick:
                Set(tree, field.Path, values.IsOn(field.Path));
                break;
            case FieldKind.Ticks:
                Set(tree, field.Path, new JsonArray([.. values.All(field.Path).Select(text => JsonValue.Create(text))]));
                break;
            case FieldKind.Numbers:
                Set(
                    tree,
                    field.Path,
                    new JsonArray([.. typed.Split([' ', ';', ','], StringSplitOptions.RemoveEmptyEntries).Select(FormValues.JsonOf)]));
                break;
            case FieldKind.Text:
                if (typed.Length == 0) faults.TryAdd(field.Path, "This is not filled in.");
                else Set(tree, field.Path, typed);
                break;
            case FieldKind.OptionalText:
                Set(tree, field.Path, typed.Length == 0 ? null : typed);
                break;
            case FieldKind.Percent:
                if (values.Number(field.Path) is { } percent and >= 0 and <= 100) Set(tree, field.Path, Math.Round(percent / 100, 6));
                else faults.TryAdd(field.Path, "Accepted: 0 to 100 percent.");
                break;
            default:
                // A number that is not there is not zero; where the watch cannot do without it, it is asked for.
                if (typed.Length == 0 && field.Kind == FieldKind.Number)
                    faults.TryAdd(field.Path, "This is not filled in; accepted: a number.");
                else
                    Set(tree, field.Path, values.Json(field.Path));
                break;
        }
    }

    private static void PutPlace(JsonObject tree, FormValues values, Dictionary<string, string> faults)
    {
        if (PlaceText.Read(values["place"]) is PlaceReading.Point point)
        {
            Set(tree, "site.position.latitudeDeg", Math.Round(point.LatitudeDeg, 6));
            Set(tree, "site.position.longitudeDeg", Math.Round(point.LongitudeDeg, 6));
        }
        else
        {
            faults.TryAdd(
                "place",
                PlaceText.Read(values["place"]) is PlaceReading.Wrong wrong
                    ? wrong.Why
                    : "Accepted: coordinates such as 48.2085, 16.3721; look a name up first.");
        }
    }

    private static void PutHome(JsonObject tree, FormValues values, Dictionary<string, string> faults)
    {
        var typed = values["home"];
        var point = typed.Length == 0 ? null : PlaceText.Read(typed) as PlaceReading.Point;
        if (typed.Length > 0 && point is null) faults.TryAdd("home", "Accepted: coordinates such as 48.2085, 16.3721, or nothing.");
        Set(tree, "outing.homeLatitudeDeg", point is null ? null : Math.Round(point.LatitudeDeg, 4));
        Set(tree, "outing.homeLongitudeDeg", point is null ? null : Math.Round(point.LongitudeDeg, 4));
    }

    private static void PutSensor(JsonObject tree, FormValues values, Dictionary<string, string> faults)
    {
        var usual = SensorSizes.Usual.Where(size => SensorSizes.Key(size.WidthMm, size.HeightMm) == values["sensor"]).ToArray();
        var (width, height) =
            usual.Length == 1
                ? (usual[0].WidthMm, usual[0].HeightMm)
                : (values.Number("kit.sensorWidthMm"), values.Number("kit.sensorHeightMm"));
        if (width is null || height is null)
        {
            faults.TryAdd(
                width is null ? "kit.sensorWidthMm" : "kit.sensorHeightMm", "This is not filled in; accepted: a number of millimetres.");
            return;
        }

        Set(tree, "kit.sensorWidthMm", width);
        Set(tree, "kit.sensorHeightMm", height);
        if (values.Number("megapixels") is not { } megapixels || megapixels is < 1 or > 500)
            faults.TryAdd("megapixels", "Accepted: 1 to 500 megapixels.");
        else
            Set(tree, "kit.pixelPitchUm", Math.Round(WatchFields.PitchUm(width.Value, height.Value, megapixels), 2));
    }

    private static JsonObject Subject(FormValues values) => values["subject.kind"] switch
    {
        "galacticBand" => new JsonObject { ["kind"] = "galacticBand", ["longitudeDeg"] = values.Json("subject.longitudeDeg") },
        "fixedPoint" => new JsonObject
        {
            ["kind"] = "fixedPoint",
            ["name"] = values["subject.name"],
            ["rightAscensionDeg"] = values.Json("subject.rightAscensionDeg"),
            ["declinationDeg"] = values.Json("subject.declinationDeg"),
        },
        var kind => new JsonObject { ["kind"] = kind },
    };

    private static JsonObject Move(FormValues values)
    {
        return new JsonObject
        {
            ["start"] = Heading("move.start"),
            ["end"] = Heading("move.end"),
            ["easeIn"] = Share("move.easeIn"),
            ["easeOut"] = Share("move.easeOut"),
            ["railM"] = values.Json("move.railM") ?? 0,
        };

        JsonObject Heading(string at) => new()
        {
            ["azimuthDeg"] = values.Json($"{at}.azimuthDeg"),
            ["altitudeDeg"] = values.Json($"{at}.altitudeDeg"),
            ["rollDeg"] = values.Json($"{at}.rollDeg") ?? 0,
        };

        JsonNode Share(string name) =>
            values[name].Length == 0 ? 0
            : values.Number(name) is { } percent ? JsonValue.Create(percent / 100)
            : JsonValue.Create(values[name]);
    }

    private static void Set(JsonObject tree, string path, JsonNode? value)
    {
        var names = path.Split('.');
        foreach (var name in names[..^1]) tree = tree[name]!.AsObject();
        tree[names[^1]] = value;
    }

    // Faults of an item belong to the list's field, those of a position to the place's.
    private static string FieldOf(string path)
    {
        var bracket = path.IndexOf('[', StringComparison.Ordinal);
        var field = bracket < 0 ? path : path[..bracket];
        return field switch
        {
            "site.position.latitudeDeg" or "site.position.longitudeDeg" => "place",
            "kit.pixelPitchUm" => "megapixels",
            "subscriber.address" => "address",
            "outing" or "outing.homeLatitudeDeg" or "outing.homeLongitudeDeg" => "home",
            _ => field,
        };
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpper(text[0], CultureInfo.InvariantCulture) + text[1..];
}
