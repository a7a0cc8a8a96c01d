using System.Globalization;
using System.Text.RegularExpressions;

namespace NightWatch.Places.Notations;

/// <summary>The geo: URI scheme, RFC 5870.</summary>
internal static partial class GeoUri
{
    private const string Notation = "geo: address";

    private const string Accepted = "accepted: geo:LATITUDE,LONGITUDE or geo:LATITUDE,LONGITUDE,ALTITUDE in degrees and metres (RFC 5870).";

    public static PlaceReading Read(string text)
    {
        var match = Form().Match(text);
        if (!match.Success) return new PlaceReading.Wrong("The geo: address cannot be read; " + Accepted);
        var parameters = match.Groups["parameters"].Value.Split(';', StringSplitOptions.RemoveEmptyEntries);
        // Names are not case-sensitive, and crs, where there is one, names the reference system (RFC 5870, 3.3 and 3.4.1).
        var system = parameters.FirstOrDefault(p => p.StartsWith("crs=", StringComparison.OrdinalIgnoreCase))?[4..];
        if (system is not null && !system.Equals("wgs84", StringComparison.OrdinalIgnoreCase))
            return new PlaceReading.Wrong($"The geo: address is in the reference system '{system}'; accepted: wgs84.");
        var (latitude, longitude) = (Number(match.Groups["lat"]), Number(match.Groups["lon"]));
        // Phones share a named point as geo:0,0?q=LATITUDE,LONGITUDE(name).
        if (match.Groups["query"] is { Success: true, Value: var query } && (latitude, longitude) == (0, 0))
            return MapLink.Read("geo://here/?" + query);
        double? altitude = match.Groups["alt"].Success ? Number(match.Groups["alt"]) : null;
        // All longitudes are one at a pole (3.4.2).
        return PlaceText.Checked(latitude, Math.Abs(latitude) == 90 ? 0 : longitude, altitude, Notation);
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^geo:(?<lat>-?[0-9]{1,3}(\.[0-9]+)?),(?<lon>-?[0-9]{1,3}(\.[0-9]+)?)(,(?<alt>-?[0-9]{1,5}(\.[0-9]+)?))?" +
        @"(?<parameters>(;[^;?]+)*)(\?(?<query>.*))?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Form();
}
