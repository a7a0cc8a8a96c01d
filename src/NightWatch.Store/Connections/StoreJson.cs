using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches.Reading;

namespace NightWatch.Store.Connections;

/// <summary>Documents in the tables: written as watch files are, but read leniently, since a newer version may have written more.</summary>
/// <remarks>
/// A closed set of cases is told apart by "kind", the name of the case; what follows from its other members is not written. So a case,
/// once released, keeps its name and the names and units of its members.
/// </remarks>
internal static class StoreJson
{
    /// <summary>The member that names the case.</summary>
    public const string Kind = "kind";

    private static readonly Type[] Closed = [typeof(Reason), typeof(Mend), typeof(Caution)];

    private static readonly JsonSerializerOptions Options = new(WatchJson.Options)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip,
        AllowOutOfOrderMetadataProperties = true,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { NameCases, LeaveOutTheRest } },
    };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options)
        ?? throw new JsonException($"A stored {typeof(T).Name} is empty.");

    /// <summary>The name of a case.</summary>
    public static string NameOf(Type type) => JsonNamingPolicy.CamelCase.ConvertName(type.Name);

    /// <summary>The cases of a closed set.</summary>
    public static IEnumerable<Type> CasesOf(Type closed) =>
        closed.Assembly.GetExportedTypes().Where(type => type != closed && closed.IsAssignableFrom(type));

    private static void NameCases(JsonTypeInfo info)
    {
        if (!Closed.Contains(info.Type)) return;
        info.PolymorphismOptions = new JsonPolymorphismOptions { TypeDiscriminatorPropertyName = Kind };
        foreach (var type in CasesOf(info.Type)) info.PolymorphismOptions.DerivedTypes.Add(new JsonDerivedType(type, NameOf(type)));
    }

    private static void LeaveOutTheRest(JsonTypeInfo info)
    {
        if (info.Kind != JsonTypeInfoKind.Object || !Closed.Any(closed => closed.IsAssignableFrom(info.Type))) return;
        for (var i = info.Properties.Count - 1; i >= 0; i--)
        {
            if (info.Properties[i] is { Set: null, AssociatedParameter: null }) info.Properties.RemoveAt(i);
            else info.Properties[i].ShouldSerialize = (_, value) => value is not null;
        }
    }
}
