using System.Globalization;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>Reads the list of reports that the US Aviation Weather Center's data API answers with (/api/data/metar?format=json).</summary>
/// <remarks>
/// Nearly every field may be null, visibility may be a number or a text such as "10+" (statute miles), cover codes are those of
/// <see cref="CloudAmount"/>. Present weather is the text of WMO code table 4678.
/// </remarks>
public static class AerodromeReports
{
    private const double MpsPerKnot = 1852.0 / 3600;
    private const double MetresPerStatuteMile = 1609.344;

    private static readonly string[] Wet = ["DZ", "RA", "SN", "SG", "PL", "GR", "GS", "UP"];

    /// <summary>Weather of another place (in the vicinity), and snow that only drifts or blows.</summary>
    private static readonly string[] NotFalling = ["VC", "DR", "BL"];

    /// <summary>All reports that have a station, a place and a time; the rest are left out.</summary>
    /// <exception cref="ForecastFormatException">Not such a list at all.</exception>
    public static IReadOnlyList<AerodromeReport> Read(ReadOnlyMemory<byte> body)
    {
        // Nothing to report may come as an empty body.
        if (body.IsEmpty) return [];
        try
        {
            using var document = JsonDocument.Parse(body);
            if (document.RootElement.ValueKind != JsonValueKind.Array) throw new ForecastFormatException("No list of reports.");
            return [.. document.RootElement.EnumerateArray().Where(item => item.ValueKind == JsonValueKind.Object).Select(Report).OfType<AerodromeReport>()];
        }
        catch (JsonException broken)
        {
            throw new ForecastFormatException($"No JSON: {broken.Message}");
        }
    }

    private static AerodromeReport? Report(JsonElement item)
    {
        if (Text(item, "icaoId") is not { Length: > 0 } station || Number(item, "obsTime") is not { } seconds || Math.Abs(seconds) > 1e11
            || Number(item, "lat") is not { } lat || Number(item, "lon") is not { } lon)
            return null;
        var weather = (Text(item, "wxString") ?? "").Split(' ');
        return new AerodromeReport(
            station, Instant.FromUnixTimeSeconds((long)seconds), lat, lon, ObservedSky.Of(Covers(item)), Number(item, "wgst") * MpsPerKnot, Visibility(item),
            weather.Any(IsWet), weather.Any(group => group.EndsWith("FG", StringComparison.Ordinal) && !group.StartsWith("VC", StringComparison.Ordinal)));
    }

    private static bool IsWet(string group) =>
        Array.Exists(Wet, code => group.Contains(code, StringComparison.Ordinal)) && !Array.Exists(NotFalling, code => group.Contains(code, StringComparison.Ordinal));

    private static IEnumerable<string> Covers(JsonElement item)
    {
        var listed = item.TryGetProperty("clouds", out var clouds) && clouds.ValueKind == JsonValueKind.Array
            ? clouds.EnumerateArray().Where(layer => layer.ValueKind == JsonValueKind.Object).Select(layer => Text(layer, "cover")).OfType<string>()
            : [];
        // Vertical visibility stands in a field of its own where the sky is obscured.
        return Number(item, "vertVis") is not null ? listed.Append("VV") : listed;
    }

    private static double? Visibility(JsonElement item)
    {
        if (Number(item, "visib") is { } miles) return miles * MetresPerStatuteMile;
        return Text(item, "visib") is { } text && double.TryParse(text.TrimEnd('+'), NumberStyles.Float, CultureInfo.InvariantCulture, out var least) && least >= 0
            ? least * MetresPerStatuteMile
            : null;
    }

    private static string? Text(JsonElement item, string name) => item.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static double? Number(JsonElement item, string name) => item.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : null;
}
