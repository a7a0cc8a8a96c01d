using System.Text.Json;
using System.Text.Json.Serialization;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>A position as the object that JSON shows.</summary>
internal sealed record WrittenPosition(double LatitudeDeg, double LongitudeDeg, double ElevationM = 0);

/// <summary>{ "latitudeDeg", "longitudeDeg", "elevationM" }.</summary>
internal sealed class GeoPositionConverter : JsonConverter<GeoPosition>
{
    public override GeoPosition Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var written = JsonSerializer.Deserialize<WrittenPosition>(ref reader, options)!;
        try
        {
            return new GeoPosition(written.LatitudeDeg, written.LongitudeDeg, written.ElevationM);
        }
        catch (ArgumentOutOfRangeException refused)
        {
            throw new JsonException(refused.Message, refused);
        }
    }

    public override void Write(Utf8JsonWriter writer, GeoPosition value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, new WrittenPosition(value.LatitudeDeg, value.LongitudeDeg, value.ElevationM), options);
}

/// <summary>[[azimuth, altitude], ...] in degrees.</summary>
internal sealed class HorizonProfileConverter : JsonConverter<HorizonProfile>
{
    public override HorizonProfile Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var pairs = JsonSerializer.Deserialize<double[][]>(ref reader, options)!;
        if (pairs.Any(pair => pair is not { Length: 2 })) throw new JsonException("A skyline point is a pair [azimuth, altitude].");
        try
        {
            return new HorizonProfile(pairs.Select(pair => new HorizonPoint(pair[0], pair[1])));
        }
        catch (ArgumentException refused)
        {
            throw new JsonException(refused.Message, refused);
        }
    }

    public override void Write(Utf8JsonWriter writer, HorizonProfile value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, value.Points.Select(point => new[] { point.AzimuthDeg, point.AltitudeDeg }), options);
}
