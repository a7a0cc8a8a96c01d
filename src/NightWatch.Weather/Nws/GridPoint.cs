using System.Globalization;
using System.Text.Json;
using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Nws;

/// <summary>An office's grid and a cell in it: where a place's forecast is found.</summary>
internal sealed record GridPoint(string GridId, int X, int Y)
{
    /// <summary>Of a <c>/points</c> answer.</summary>
    /// <returns>Null where the answer names no grid: the place is not forecast for.</returns>
    /// <exception cref="ForecastFormatException">Not a points answer.</exception>
    public static GridPoint? Read(ReadOnlyMemory<byte> body) => FeedJson.Read(body, "National Weather Service points", root =>
    {
        var properties = root.NeedObject("properties", "National Weather Service points");
        return properties.TextOrNull("gridId") is { Length: >= 2 and <= 4 } id && id.All(char.IsAsciiLetterOrDigit)
            && Number(properties.Member("gridX")) is { } x && Number(properties.Member("gridY")) is { } y
            ? new GridPoint(id, x, y)
            : null;
    });

    /// <summary>Its path under the service's address.</summary>
    public string Path => string.Create(CultureInfo.InvariantCulture, $"gridpoints/{GridId}/{X},{Y}");

    /// <summary>The numbers come as numbers in one answer and as texts in another.</summary>
    private static int? Number(JsonElement? value) =>
        value switch
        {
            { ValueKind: JsonValueKind.Number } number when number.TryGetInt32(out var n) && n >= 0 => n,
            { ValueKind: JsonValueKind.String } text
                when int.TryParse(text.GetString(), NumberStyles.None, CultureInfo.InvariantCulture, out var n) => n,
            _ => null,
        };
}
