using System.Globalization;
using System.Text.RegularExpressions;

namespace NightWatch.Places.Notations;

/// <summary>The numbers in a pasted map link. No link is ever followed; a shortened one holds no numbers and is refused.</summary>
internal static partial class MapLink
{
    private const string Notation = "map link";

    public static PlaceReading Read(string text)
    {
        var link = Uri.UnescapeDataString(text.Replace('+', ' '));
        // A pin says more than the middle of the map, so the forms are tried in this order.
        foreach (var form in (Regex[])[PinData(), NamedLatitudeFirst(), QueryPair(), MapFragment(), Pair()])
        {
            if (form.Match(link) is not { Success: true } match) continue;
            return PlaceText.Checked(Number(match.Groups["lat"]), Number(match.Groups["lon"]), null, Notation);
        }

        return new PlaceReading.Wrong(
            "There are no coordinates in that link (a shortened one has none); accepted: a long map link, or the coordinates themselves.");
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"!3d(?<lat>-?[0-9]{1,3}(\.[0-9]+)?)!4d(?<lon>-?[0-9]{1,3}(\.[0-9]+)?)",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex PinData();

    [GeneratedRegex(
        @"[?&#;](m?lat|latitude)=(?<lat>-?[0-9]{1,3}(\.[0-9]+)?)&(.*&)?(m?lon|m?lng|longitude)=(?<lon>-?[0-9]{1,3}(\.[0-9]+)?)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex NamedLatitudeFirst();

    [GeneratedRegex(
        @"[?&](q|ll|query|center|destination|daddr|point|pin)=(loc:)?\s*" +
        @"(?<lat>-?[0-9]{1,3}(\.[0-9]+)?)\s*[,~]\s*(?<lon>-?[0-9]{1,3}(\.[0-9]+)?)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex QueryPair();

    [GeneratedRegex(
        @"#(.*[=&])?[0-9]{1,2}(\.[0-9]+)?/(?<lat>-?[0-9]{1,3}\.[0-9]+)/(?<lon>-?[0-9]{1,3}\.[0-9]+)",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex MapFragment();

    [GeneratedRegex(
        @"(?<![0-9.])(?<lat>-?[0-9]{1,3}\.[0-9]{2,})\s*[,/]\s*(?<lon>-?[0-9]{1,3}\.[0-9]{2,})(?![0-9.])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Pair();
}
