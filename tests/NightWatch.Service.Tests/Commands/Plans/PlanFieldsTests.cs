using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Service.Tests.Documents;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Words.Documents;
using NodaTime;

namespace NightWatch.Service.Tests.Commands.Plans;

/// <summary>The list of fields in plan-fields.md is made from the types that <c>plan --json</c> writes.</summary>
public sealed class PlanFieldsTests
{
    /// <summary>Where the list is kept.</summary>
    internal const string Path = "src/NightWatch.Service/Commands/Plans/plan-fields.md";

    private const string Head = """
        # Fields of `plan --json`

        One JSON document, listed from the types that write it and kept true by `PlanFieldsTests`. Names are camelCase; an *instant* is
        UTC, ISO 8601 with milliseconds; a *period* is `{ "start", "end" }`, its end not part of it; a *fraction* runs from 0 to 1; a
        *direction* is `{ "altitudeDeg", "azimuthDeg" }`, a *heading* `{ "azimuthDeg", "altitudeDeg", "rollDeg" }`. Units stand in the
        name: `Deg` degrees, `M` metres, `Mm` millimetres, `Mps` metres a second, `C` °C, `K` kelvin of difference, `W` watts, `Wh` watt
        hours, `S` seconds, `Min` minutes, `Mag` V magnitudes a square arcsecond. Azimuth runs from north through east, roll clockwise as
        seen from behind the camera. Figures are rounded to a billionth. **`null` is unknown or does not happen; unknown is never zero.**
        Every computed part has a `source`; those of lists and shared parts stand in `sources`.

        """;

    // What stands in many places is told once, in the head.
    private static readonly Dictionary<Type, string> InHead = new() { [typeof(Heading)] = "heading", [typeof(Horizontal)] = "direction" };

    private static readonly Dictionary<string, string> Spoken = new()
    {
        ["text"] = "What it says in one sentence, in metric units.",
        ["fix"] = "What would make it good; null: nothing would, or it is.",
        ["source"] = "The formula or convention behind it.",
        ["explained"] = "How it was found, with the figures.",
        ["title"] = "What happens.",
        ["why"] = "Why then; null: its name says it.",
    };

    private readonly DocComments comments = new();
    private readonly StringBuilder text = new(Head);
    private readonly List<string> silent = [];

    [Fact]
    public void The_list_of_fields_is_what_the_command_writes()
    {
        Part("The decision");
        Field("night", typeof(NightPlan).GetProperty(nameof(NightPlan.Night))!);
        Say("zone", "text", "IANA id of the site's zone.");
        Field("madeAt", typeof(NightPlan).GetProperty(nameof(NightPlan.MadeAt))!);
        Field("verdict", typeof(Verdict).GetProperty(nameof(Verdict.Class))!);
        Some("probability", typeof(Probability), "value", "basis", "count", "+explained", "uncalibrated", "calibrationVersion");
        Say("usableMinutes", "number", comments.Of(typeof(Verdict).GetProperty(nameof(Verdict.ForecastMin))!));
        Some("needs[]", typeof(Need), "factor");
        Say("needs[].lostMinutes", "number", comments.Of(typeof(Need).GetProperty(nameof(Need.LostMin))!));
        Some("needs[]", typeof(Need), "+text");
        Walk("tradeOff", typeof(TradeOff));
        Say("deciding", Shape(typeof(Factor)), "Factor of the first reason.");
        Some(
            "reasons[]", typeof(Reason), "factor", "severity", "when", "value", "limit", "unit", "+text", "+fix", "+source", "isUnknown");
        Part("Windows and sky");
        Field("windows.span", typeof(NightSky).GetProperty(nameof(NightSky.Span))!);
        Field("windows.astronomicalNight[]", typeof(NightSky).GetProperty(nameof(NightSky.AstronomicalNight))!);
        Field("windows.dark[]", typeof(NightSky).GetProperty(nameof(NightSky.DarkWindows))!);
        Field("windows.subject[]", typeof(NightSky).GetProperty(nameof(NightSky.SubjectWindows))!);
        Field("windows.shooting[]", typeof(NightSky).GetProperty(nameof(NightSky.ShootingWindows))!);
        Field("windows.run", typeof(Verdict).GetProperty(nameof(Verdict.Run))!);
        Say("sky", "object", "The whole answer of the `sky` command for this site, night and subject.");
        Say("watch", "object", "The watch as it was read, defaults filled in; field by field in `deploy/samples/watch.json`.");
        Part("The parts of the plan");
        string[] own = ["watch", "night", "madeAt", "sky", "verdict", "cautions", "timeline", "packing", "summary", "leaveBy"];
        foreach (var part in Properties(typeof(NightPlan)).Where(part => !own.Contains(part.Name))) One("", part);
        Part("Cautions, timeline, packing, the rest");
        Some("cautions[]", typeof(Caution), "kind", "level", "+text", "+source");
        Some("timeline[]", typeof(TimelineEntry), "at", "step", "+title", "+why");
        Say("packing[]", "text", "What this night needs, with the figure that asks for it.");
        Field("leaveBy", typeof(NightPlan).GetProperty(nameof(NightPlan.LeaveBy))!);
        Some("summary", typeof(NightSummary), "cloudMean", "cloudMost", "dewOnset", "leastDewMarginK", "moonIlluminatedFraction");
        foreach (var name in (string[])["cloud", "dew", "moon"])
            Say($"summary.{name}", "text", "One of the three sentences that open every letter.");
        Say(
            "laterNights[]", "object", "Up to five nights after this one that the same answer covers: `night`, `isFree`, `verdict`, " +
            "`probability`, `usableMinutes`, `run`, `leaveBy` and `deciding` (a reason).");
        Say("sources", "object", "Sources of `sky`, `conditions`, `summary`, `timeline` and `laterNights`.");

        Assert.True(silent.Count == 0, $"What these are is not said: {string.Join(", ", silent)}.");
        WrittenFile.Same(Path, text.ToString());
    }

    private static IEnumerable<JsonPropertyInfo> Properties(Type type) =>
        Document.Options.GetTypeInfo(type).Properties.Where(one => one.Get is not null);

    private void Part(string title) => text.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");

    /// <summary>Some members of a type, and (with a plus) what the command says beside them.</summary>
    private void Some(string path, Type type, params string[] names)
    {
        foreach (var name in names)
        {
            if (name[0] == '+') Say($"{path}.{name[1..]}", "text", Spoken[name[1..]]);
            else One(path + ".", Properties(type).Single(one => one.Name == name));
        }
    }

    private void Walk(string path, Type type)
    {
        foreach (var property in Properties(type)) One(path + ".", property);
    }

    private void One(string before, JsonPropertyInfo property)
    {
        var member = (MemberInfo)property.AttributeProvider!;
        var (type, isList) = Item(property.PropertyType);
        var path = before + property.Name + (isList ? "[]" : "");
        Field(path, member);
        if (Document.Options.GetTypeInfo(type).Kind == JsonTypeInfoKind.Object && !InHead.ContainsKey(type)) Walk(path, type);
    }

    private void Field(string path, MemberInfo member)
    {
        var said = comments.Of(member);
        Say(
            path,
            Shape(Item(((PropertyInfo)member).PropertyType).Type),
            said.Length == 0 && Spoken.TryGetValue(path[(path.LastIndexOf('.') + 1)..], out var spoken) ? spoken : said);
    }

    private void Say(string path, string shape, string said)
    {
        if (said.Length == 0) silent.Add(path);
        text.Append(WrittenFile.Item($"`{path}` ({shape}): {said}"));
    }

    private static (Type Type, bool IsList) Item(Type type)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string)) return (type, false);
        var list = type.GetInterfaces()
            .Append(type)
            .FirstOrDefault(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IEnumerable<>));
        return list is null
            ? (type, false)
            : (Nullable.GetUnderlyingType(list.GenericTypeArguments[0]) ?? list.GenericTypeArguments[0], true);
    }

    private static string Shape(Type type) => type switch
    {
        _ when type == typeof(Instant) => "instant",
        _ when type == typeof(Interval) => "period",
        _ when type == typeof(LocalDate) => "date",
        _ when type == typeof(LocalTime) => "time of day",
        _ when type == typeof(Duration) => "duration",
        _ when type == typeof(bool) => "true or false",
        _ when type == typeof(int) || type == typeof(long) => "count",
        _ when type == typeof(double) => "number",
        _ when type == typeof(string) || type == typeof(Uri) || type == typeof(Formula) => "text",
        _ when InHead.TryGetValue(type, out var name) => name,
        { IsEnum: true } => string.Join(", ", Enum.GetNames(type).Select(name => $"`{JsonNamingPolicy.CamelCase.ConvertName(name)}`")),
        _ => "object",
    };
}
