using System.Text.Json;
using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Nws;

/// <summary>The <c>weather</c> layer's words as figures.</summary>
/// <remarks>
/// Coverage as a share of the area or as a probability, by the middle of the offices' scale (National Weather Service, Zone Forecast
/// Terminology: isolated or slight chance 20 %, scattered or chance 30 to 50 %, numerous or likely 60 to 70 %, beyond it 80 to 100 %).
/// What comes of it is Derived.
/// </remarks>
internal static class WeatherWords
{
    /// <summary>The greatest coverage of any of the kinds of weather, fraction; 0 where the forecaster names none of them.</summary>
    /// <returns>Null when the value is not a list of weather at all, or a kind comes with a coverage we do not know.</returns>
    public static double? Coverage(JsonElement value, Func<string, bool> isKind)
    {
        if (value.ValueKind != JsonValueKind.Array)
            return null;
        double? most = 0;
        foreach (var entry in value.EnumerateArray())
        {
            if (entry.TextOrNull("weather") is not { } weather || !isKind(weather))
                continue;
            if (Share(entry.TextOrNull("coverage")) is not { } share)
                return null;
            most = Math.Max(most.Value, share);
        }

        return most;
    }

    /// <summary>Fog of any kind.</summary>
    public static bool IsFog(string weather) => weather is "fog" or "freezing_fog" or "ice_fog";

    /// <summary>Thunderstorms.</summary>
    public static bool IsThunder(string weather) => weather is "thunderstorms";

    private static double? Share(string? coverage) => coverage switch
    {
        "isolated" or "slight_chance" or "few" or "patchy" or "brief" => 0.2,
        "scattered" or "chance" or "areas" or "intermittent" or "occasional" or "periods" => 0.4,
        "numerous" or "likely" or "frequent" => 0.65,
        "widespread" or "definite" or null => 0.9,
        _ => null,
    };
}
