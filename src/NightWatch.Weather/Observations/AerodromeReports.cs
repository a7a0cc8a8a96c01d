using System.Globalization;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>Reads the list of reports that the US Aviation Weather Center's data API answers with (/api/data/metar?format=json).</summary>
/// <remarks>
/// Nearly every field may be null, visibility may be a number or a text such as "10+" (statute miles), cover codes are those of
/// <see cref="CloudAmount"/>. A sky without a layer has its code in the report's own "cover" and an empty list of clouds. Present weather
/// is the text of WMO code table 4678. The report as it was sent stands in "rawOb"; AUTO there marks one that nobody looked at.
/// </remarks>
public static class AerodromeReports
{
    private const double MpsPerKnot = 1852.0 / 3600;
    private const double MetresPerStatuteMile = 1609.344;

    private static readonly string[] Wet = ["DZ", "RA", "SN", "SG", "PL", "GR", "GS", "UP"];

    /// <summary>Weather of another place (in the vicinity), and snow that only drifts or blows.</summary>
    private static readonly string[] NotFalling = ["VC", "DR", "BL"];

    /// <summary>
    /// Fog at the station, thick or freezing. Shallow fog (MI) lies lower than two metres, patches (BC) and partial fog (PR) leave 1000
    /// metres of sight in parts of the aerodrome, fog in the vicinity (VC) is another place's (WMO-No. 306, remarks on table 4678).
    /// </summary>
    private static readonly string[] Fog = ["FG", "FZFG"];

    /// <summary>All reports that have a station, a place and a time; the rest are left out.</summary>
    /// <exception cref="ForecastFormatException">Not such a list at all.</exception>
    public static IReadOnlyList<AerodromeReport> Read(ReadOnlyMemory<byte> body)
    {
        // Nothing to report may come as an empty body.
        if (body.IsEmpty) return [];
        return FeedJson.Read(body, "aerodrome reports", root => root.ValueKind == JsonValueKind.Array
            ? root.EnumerateArray().Select(Report).OfType<AerodromeReport>().ToList()
            : throw new ForecastFormatException("aerodrome reports: the body is no list."));
    }

    private static AerodromeReport? Report(JsonElement item)
    {
        if (
            item.TextOrNull("icaoId") is not { Length: > 0 } station
            || item.NumberOrNull("obsTime") is not { } seconds
            || Math.Abs(seconds) > 1e11
            || item.NumberOrNull("lat") is not { } lat
            || item.NumberOrNull("lon") is not { } lon)
            return null;
        var weather = (item.TextOrNull("wxString") ?? "").Split(' ');
        IReadOnlyList<string> covers = [.. Covers(item)];
        return new AerodromeReport(
            station, Instant.FromUnixTimeSeconds((long)seconds), lat, lon, ObservedSky.Of(covers), Sight(item, covers),
            item.NumberOrNull("wgst") * MpsPerKnot, Visibility(item), weather.Any(IsWet),
            weather.Any(group => Fog.Contains(group, StringComparer.Ordinal)));
    }

    private static StationSight Sight(JsonElement item, IReadOnlyList<string> covers)
    {
        var raw = (item.TextOrNull("rawOb") ?? "").Split(' ').TakeWhile(group => group != "RMK").ToList();
        double? highest = item.Member("clouds") is { ValueKind: JsonValueKind.Array } clouds
            ? clouds.EnumerateArray().Max(layer => layer.NumberOrNull("base"))
            : null;
        return StationSight.Of(raw.Contains("AUTO"), covers, highest, raw.Exists(group => group.EndsWith("SM", StringComparison.Ordinal)));
    }

    private static bool IsWet(string group) =>
        Array.Exists(Wet, code => group.Contains(code, StringComparison.Ordinal))
        && !Array.Exists(NotFalling, code => group.Contains(code, StringComparison.Ordinal));

    private static IEnumerable<string> Covers(JsonElement item)
    {
        List<string> listed = item.Member("clouds") is { ValueKind: JsonValueKind.Array } clouds
            ? [.. clouds.EnumerateArray().Select(layer => layer.TextOrNull("cover")).OfType<string>()]
            : [];
        if (listed.Count == 0 && item.TextOrNull("cover") is { } whole) listed.Add(whole);
        // Vertical visibility stands in a field of its own where the sky is obscured.
        return item.NumberOrNull("vertVis") is not null ? listed.Append("VV") : listed;
    }

    private static double? Visibility(JsonElement item)
    {
        if (item.NumberOrNull("visib") is { } miles) return miles * MetresPerStatuteMile;
        return
            item.TextOrNull("visib") is { } text
            && double.TryParse(text.TrimEnd('+'), NumberStyles.Float, CultureInfo.InvariantCulture, out var least)
            && least >= 0
            ? least * MetresPerStatuteMile
            : null;
    }
}
