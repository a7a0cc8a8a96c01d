using System.Text.Json;
using System.Text.Json.Serialization;
using NightWatch.Planning.Watches.Reading;

namespace NightWatch.Store.Connections;

/// <summary>Documents in the tables: written as watch files are, but read leniently, since a newer version may have written more.</summary>
internal static class StoreJson
{
    private static readonly JsonSerializerOptions Options = new(WatchJson.Options) { UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options)
        ?? throw new JsonException($"A stored {typeof(T).Name} is empty.");
}
