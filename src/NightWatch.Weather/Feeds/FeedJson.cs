using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Feeds;

/// <summary>
/// Tolerant reading of a feed's JSON: structure must be there, a value may be absent, null or of another kind, and is then unknown.
/// </summary>
internal static class FeedJson
{
    private static readonly JsonDocumentOptions Options = new() { MaxDepth = 32 };

    /// <summary>Parses a body and hands its root to a reader; whatever JSON can do wrong becomes one kind of error.</summary>
    /// <exception cref="ForecastFormatException">Not JSON, not whole, or not the structure the reader needs.</exception>
    public static T Read<T>(ReadOnlyMemory<byte> body, string feed, Func<JsonElement, T> read)
    {
        try
        {
            using var document = JsonDocument.Parse(body, Options);
            return read(document.RootElement);
        }
        catch (JsonException e)
        {
            throw new ForecastFormatException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{feed}: the body is not whole JSON (line {e.LineNumber + 1}, byte {e.BytePositionInLine})."),
                e);
        }
        catch (InvalidOperationException e)
        {
            // JsonElement reports text that is not UTF-8 in this way, wherever it is first touched.
            throw new ForecastFormatException($"{feed}: the body holds text that cannot be read.", e);
        }
    }

    /// <summary>A member that must be an object.</summary>
    public static JsonElement NeedObject(this JsonElement parent, string name, string path) =>
        parent.Member(name) is { ValueKind: JsonValueKind.Object } found
            ? found
            : throw new ForecastFormatException($"{path}.{name} is not an object.");

    /// <summary>A member that must be an array.</summary>
    public static JsonElement NeedArray(this JsonElement parent, string name, string path) =>
        parent.Member(name) is { ValueKind: JsonValueKind.Array } found
            ? found
            : throw new ForecastFormatException($"{path}.{name} is not a list.");

    /// <summary>A member of an object; null where there is none.</summary>
    public static JsonElement? Member(this JsonElement parent, string name) =>
        parent.ValueKind == JsonValueKind.Object && parent.TryGetProperty(name, out var found) ? found : null;

    /// <summary>A member that is an object; null where it is not.</summary>
    public static JsonElement? ObjectOrNull(this JsonElement parent, string name) =>
        parent.Member(name) is { ValueKind: JsonValueKind.Object } found ? found : null;

    /// <summary>A finite number; null for everything else.</summary>
    public static double? NumberOrNull(this JsonElement? value) =>
        value is { ValueKind: JsonValueKind.Number } number && number.TryGetDouble(out var d) && double.IsFinite(d) ? d : null;

    /// <summary>A finite number; null for everything else.</summary>
    public static double? NumberOrNull(this JsonElement parent, string name) => parent.Member(name).NumberOrNull();

    /// <summary>A text; null for everything else.</summary>
    public static string? TextOrNull(this JsonElement parent, string name) =>
        parent.Member(name) is { ValueKind: JsonValueKind.String } text ? text.GetString() : null;

    /// <summary>An instant in ISO 8601 with an offset or Z; null for everything else.</summary>
    public static Instant? InstantOrNull(this JsonElement parent, string name) => ParseInstant(parent.TextOrNull(name));

    /// <summary>An instant in ISO 8601 with an offset or Z; null for everything else.</summary>
    public static Instant? ParseInstant(string? text)
    {
        if (text is null)
            return null;
        if (text.EndsWith('Z'))
        {
            var utc = InstantPattern.ExtendedIso.Parse(text);
            return utc.Success ? utc.Value : null;
        }

        var offset = OffsetDateTimePattern.Rfc3339.Parse(text);
        return offset.Success ? offset.Value.ToInstant() : null;
    }
}
