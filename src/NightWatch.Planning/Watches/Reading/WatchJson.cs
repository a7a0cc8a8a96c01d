using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using NightWatch.Places;
using NodaTime.Serialization.SystemTextJson;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>How sites and watches are written as JSON: in files, in the store, on the command line.</summary>
/// <remarks>
/// camelCase members; enums as camelCase words; a zone by its TZDB id; local times as "19:00"; a subject as an object with
/// "kind"; a skyline as an array of [azimuth, altitude] pairs. Comments and trailing commas may be read, unknown members may not.
/// </remarks>
public static class WatchJson
{
    /// <summary>The one set of options; read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.General)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            ReadCommentHandling = JsonCommentHandling.Skip,
            AllowTrailingCommas = true,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        options.Converters.Add(new LocalTimeConverter());
        options.Converters.Add(new GeoPositionConverter());
        options.Converters.Add(new HorizonProfileConverter());
        options.Converters.Add(new SubjectConverter());
        options.Converters.Add(NodaConverters.CreateDateTimeZoneConverter(ZonesInUse.Instance));
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.ConfigureForNodaTime(ZonesInUse.Instance);
        options.TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { AcceptRetired } };
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    /// <summary>
    /// Watches saved before the dark share name a limit that is gone: the Moon's brightening. It is read, and nothing comes of it.
    /// </summary>
    private static void AcceptRetired(JsonTypeInfo info)
    {
        if (info.Type != typeof(Limits)) return;
        var retired = info.CreateJsonPropertyInfo(typeof(Threshold), "moonBrighteningMag");
        retired.Set = static (_, _) => { };
        info.Properties.Add(retired);
    }
}
