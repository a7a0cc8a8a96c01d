using System.Text.Json;
using NightWatch.Sky.Nights;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Words.Documents;

/// <summary>
/// The sky document, field by field. Written by hand rather than by the serializer: it is a fixed contract, a batch writes
/// a million of them, and a single one is there before a serializer has looked at its types.
/// </summary>
public static class SkyJson
{
    /// <summary>Writes one night.</summary>
    public static void Write(Utf8JsonWriter json, NightSky sky)
    {
        json.WriteStartObject();
        json.WriteString("night"u8, LocalDatePattern.Iso.Format(sky.Night));
        json.WriteString("zone"u8, sky.Zone.Id);
        json.WritePropertyName("span"u8);
        Write(json, sky.Span);

        json.WriteStartObject("sun"u8);
        json.WriteString(
            "state"u8,
            sky.Sun.State switch
            {
                SunState.AlwaysUp => "alwaysUp"u8,
                SunState.AlwaysDown => "alwaysDown"u8,
                _ => "normal"u8,
            });
        Write(json, "set"u8, sky.Sun.Set);
        Write(json, "civilDusk"u8, sky.Sun.CivilDusk);
        Write(json, "nauticalDusk"u8, sky.Sun.NauticalDusk);
        Write(json, "astronomicalDusk"u8, sky.Sun.AstronomicalDusk);
        Write(json, "astronomicalDawn"u8, sky.Sun.AstronomicalDawn);
        Write(json, "nauticalDawn"u8, sky.Sun.NauticalDawn);
        Write(json, "civilDawn"u8, sky.Sun.CivilDawn);
        Write(json, "rise"u8, sky.Sun.Rise);
        json.WriteEndObject();

        json.WriteStartObject("moon"u8);
        Write(json, "rises"u8, sky.Moon.Rises);
        Write(json, "sets"u8, sky.Moon.Sets);
        json.WriteNumber("illuminatedFraction"u8, Math.Round(sky.Moon.IlluminatedFraction, 6));
        json.WriteNumber("altitudeAtMidnight"u8, Math.Round(sky.Moon.AltitudeAtMidnightDeg, 6));
        json.WriteNumber("azimuthAtMidnight"u8, Math.Round(sky.Moon.AzimuthAtMidnightDeg, 6));
        json.WriteEndObject();

        json.WriteStartObject("subject"u8);
        json.WriteString("state"u8, sky.Subject.State switch
        {
            SubjectState.AlwaysUp => "alwaysUp"u8,
            SubjectState.AlwaysDown => "alwaysDown"u8,
            SubjectState.None => "none"u8,
            _ => "normal"u8,
        });
        Write(json, "rise"u8, sky.Subject.Rise);
        Write(json, "set"u8, sky.Subject.Set);
        Write(json, "transit"u8, sky.Subject.Transit);
        if (sky.Subject.TransitAltitudeDeg is { } altitude) json.WriteNumber("transitAltitude"u8, Math.Round(altitude, 6));
        else json.WriteNull("transitAltitude"u8);
        json.WriteEndObject();

        Write(json, "darkWindows"u8, sky.DarkWindows);
        Write(json, "subjectWindows"u8, sky.SubjectWindows);
        Write(json, "shootingWindows"u8, sky.ShootingWindows);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ReadOnlySpan<byte> name, Instant? at)
    {
        json.WritePropertyName(name);
        if (at is { } instant) Write(json, instant);
        else json.WriteNullValue();
    }

    private static void Write(Utf8JsonWriter json, ReadOnlySpan<byte> name, IReadOnlyList<Instant> instants)
    {
        json.WriteStartArray(name);
        foreach (var instant in instants) Write(json, instant);
        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, ReadOnlySpan<byte> name, IReadOnlyList<Interval> windows)
    {
        json.WriteStartArray(name);
        foreach (var window in windows) Write(json, window);
        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Interval window)
    {
        json.WriteStartObject();
        Write(json, "start"u8, window.Start);
        Write(json, "end"u8, window.End);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Instant at)
    {
        Span<byte> utf8 = stackalloc byte[InstantText.Length];
        InstantText.Format(at, utf8);
        json.WriteStringValue(utf8);
    }
}
