using System.Text.Json;
using System.Text.Json.Serialization;

namespace NightWatch.Planning.Chance;

/// <summary>How the texts of this folder are written; what is missing, unknown or twice is refused.</summary>
internal static class ChanceJson
{
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerOptions.Strict)
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        MaxDepth = 8,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };
}
