using System.Text.Json;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Nws;

/// <summary>One layer of a gridpoint answer: values that hold for intervals.</summary>
internal static class GridLayer
{
    /// <summary>Numbers in the series' unit with their intervals; intervals or values that cannot be read are left out.</summary>
    public static IEnumerable<(Interval When, double Value)> Numbers(JsonElement properties, string layer, UnitKind kind, string documented)
    {
        var unit = properties.ObjectOrNull(layer)?.TextOrNull("uom") ?? documented;
        foreach (var (when, value) in Values(properties, layer))
        {
            if (FeedUnits.Convert(((JsonElement?)value).NumberOrNull(), unit, kind) is { } number)
                yield return (when, number);
        }
    }

    /// <summary>Values of any kind with their intervals.</summary>
    public static IEnumerable<(Interval When, JsonElement Value)> Values(JsonElement properties, string layer)
    {
        if (properties.ObjectOrNull(layer)?.Member("values") is not { ValueKind: JsonValueKind.Array } values)
            yield break;
        foreach (var entry in values.EnumerateArray())
        {
            if (ValidTime.Parse(entry.TextOrNull("validTime")) is { } when && entry.Member("value") is { } value)
                yield return (when, value);
        }
    }

    /// <summary>The hours an interval stands for: the grid's own step, from which runs of equal values were merged.</summary>
    public static IEnumerable<Instant> Hours(Interval when)
    {
        for (var at = when.Start; at < when.End; at += Duration.FromHours(1))
            yield return at;
    }
}
