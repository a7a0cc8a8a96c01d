using System.Text.Json;
using System.Text.Json.Serialization;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>
/// {"kind":"galacticCore"}, {"kind":"galacticBand","longitudeDeg":..},
/// {"kind":"fixedPoint","name":..,"rightAscensionDeg":..,"declinationDeg":..} or {"kind":"stars"}.
/// </summary>
internal sealed class SubjectConverter : JsonConverter<Subject>
{
    /// <summary>The kinds and the type each is written by.</summary>
    public static IReadOnlyDictionary<string, Type> Kinds { get; } = new Dictionary<string, Type>
    {
        ["galacticCore"] = typeof(Subject.GalacticCore),
        ["galacticBand"] = typeof(Subject.GalacticBand),
        ["fixedPoint"] = typeof(Subject.FixedPoint),
        ["stars"] = typeof(Subject.Stars),
    };

    public override bool CanConvert(Type typeToConvert) => typeToConvert == typeof(Subject);

    public override Subject Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var document = JsonDocument.ParseValue(ref reader);
        if (document.RootElement.ValueKind != JsonValueKind.Object
            || !document.RootElement.TryGetProperty("kind", out var kind)
            || kind.ValueKind != JsonValueKind.String
            || !Kinds.TryGetValue(kind.GetString()!, out var type))
            throw new JsonException($"A subject is an object whose \"kind\" is one of {string.Join(", ", Kinds.Keys)}.");

        var rest = new Dictionary<string, JsonElement>();
        foreach (var member in document.RootElement.EnumerateObject().Where(member => member.Name != "kind"))
            rest[member.Name] = member.Value;
        return (Subject)JsonSerializer.SerializeToElement(rest, options).Deserialize(type, options)!;
    }

    public override void Write(Utf8JsonWriter writer, Subject value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", Kinds.First(pair => pair.Value == value.GetType()).Key);
        foreach (var member in JsonSerializer.SerializeToElement(value, value.GetType(), options).EnumerateObject()) member.WriteTo(writer);
        writer.WriteEndObject();
    }
}
