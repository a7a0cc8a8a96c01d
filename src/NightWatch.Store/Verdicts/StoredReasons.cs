using System.Text.Json.Nodes;
using NightWatch.Planning.Reasons;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Verdicts;

/// <summary>The reasons of a verdict as its row keeps them: data, said anew in the reader's units whenever they are read.</summary>
internal static class StoredReasons
{
    public static string Write(IReadOnlyList<Reason> reasons) => StoreJson.Write(reasons);

    /// <summary>Rows of before 2026-12 kept sentences instead, and no kind: they are read as what was recorded.</summary>
    public static IReadOnlyList<Reason> Read(string json)
    {
        var reasons = JsonNode.Parse(json)!.AsArray();
        var old = StoreJson.NameOf(typeof(Recorded));
        foreach (var reason in reasons.OfType<JsonObject>()) reason.TryAdd(StoreJson.Kind, old);
        return StoreJson.Read<IReadOnlyList<Reason>>(reasons.ToJsonString());
    }
}
