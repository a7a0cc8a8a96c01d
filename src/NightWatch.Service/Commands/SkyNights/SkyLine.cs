using System.Text.Json;
using NightWatch.Service.Terminal;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>Reads one line of a batch.</summary>
internal static class SkyLine
{
    private const string Fields = "lat, lon, elevation, zone, night, subject, ra, dec, minAltitude";

    /// <exception cref="BadInputException">One sentence that names the field.</exception>
    public static SkyRequest Read(ReadOnlySpan<byte> line)
    {
        double? lat = null, lon = null, elevation = null, ra = null, dec = null, minAltitude = null;
        DateTimeZone? zone = null;
        LocalDate? night = null;
        string? subject = null;
        try
        {
            var reader = new Utf8JsonReader(line);
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
                throw new BadInputException("the line is not a JSON object");
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                if (reader.ValueTextEquals("lat"u8)) lat = Number(ref reader, "lat", -90, 90);
                else if (reader.ValueTextEquals("lon"u8)) lon = Number(ref reader, "lon", -180, 180);
                else if (reader.ValueTextEquals("elevation"u8)) elevation = Number(ref reader, "elevation", -500, 9000);
                else if (reader.ValueTextEquals("zone"u8)) zone = Text(ref reader, "zone", Given.ZoneOf);
                else if (reader.ValueTextEquals("night"u8)) night = Text(ref reader, "night", text => (LocalDate?)Given.DateOf(text));
                else if (reader.ValueTextEquals("subject"u8)) subject = Text(ref reader, "subject", text => text);
                else if (reader.ValueTextEquals("ra"u8)) ra = Number(ref reader, "ra", 0, 360);
                else if (reader.ValueTextEquals("dec"u8)) dec = Number(ref reader, "dec", -90, 90);
                else if (reader.ValueTextEquals("minAltitude"u8)) minAltitude = Number(ref reader, "minAltitude", -90, 90);
                else throw new BadInputException($"{reader.GetString()} is not known; accepted: {Fields}");
            }

            reader.Read();
        }
        catch (JsonException broken)
        {
            throw new BadInputException("the line is not JSON: " + broken.Message.Split(" LineNumber:")[0]);
        }
        catch (InvalidOperationException)
        {
            throw new BadInputException("the line is not valid UTF-8 text");
        }

        return new SkyRequest(
            new GeoPosition(lat ?? throw Missing("lat"), lon ?? throw Missing("lon"), elevation ?? 0),
            zone ?? throw Missing("zone"),
            night ?? throw Missing("night"),
            SubjectNames.SubjectOf(subject, ra, dec),
            minAltitude ?? SkyRequest.DefaultMinAltitudeDeg);
    }

    private static BadInputException Missing(string field) => new($"{field} is missing; accepted: {Fields}");

    private static double? Number(ref Utf8JsonReader reader, string field, double least, double most)
    {
        reader.Read();
        if (reader.TokenType == JsonTokenType.Null) return null;
        if (reader.TokenType == JsonTokenType.Number && reader.TryGetDouble(out var value) && value >= least && value <= most) return value;
        throw new BadInputException(
            FormattableString.Invariant($"{field} {Shown(ref reader)} is out of range; accepted: {least} to {most}"));
    }

    private static T? Text<T>(ref Utf8JsonReader reader, string field, Func<string, T> parse)
    {
        reader.Read();
        if (reader.TokenType == JsonTokenType.Null) return default;
        if (reader.TokenType != JsonTokenType.String) throw new BadInputException($"{field} {Shown(ref reader)} is not text");
        try
        {
            return parse(reader.GetString()!);
        }
        catch (BadInputException refused)
        {
            throw new BadInputException($"{field}: {refused.Message}");
        }
    }

    private static string Shown(ref Utf8JsonReader reader) =>
        reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray
            ? "(not a single value)"
            : System.Text.Encoding.UTF8.GetString(reader.ValueSpan);
}
