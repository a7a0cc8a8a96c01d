using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>"19:00", as people write a time of day; seconds are accepted and only written where there are any.</summary>
internal sealed class LocalTimeConverter : JsonConverter<LocalTime>
{
    private static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH':'mm");
    private static readonly LocalTimePattern Seconds = LocalTimePattern.CreateWithInvariantCulture("HH':'mm':'ss");

    public override LocalTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text =
            reader.TokenType == JsonTokenType.String
                ? reader.GetString()!
                : throw new JsonException("A time of day is text such as \"19:00\".");
        var parsed = Minutes.Parse(text);
        if (!parsed.Success) parsed = Seconds.Parse(text);
        return parsed.Success ? parsed.Value : throw new JsonException($"'{text}' is not a time of day such as \"19:00\".");
    }

    public override void Write(Utf8JsonWriter writer, LocalTime value, JsonSerializerOptions options) =>
        writer.WriteStringValue((value.Second == 0 ? Minutes : Seconds).Format(value));
}
