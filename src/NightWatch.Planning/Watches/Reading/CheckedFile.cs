using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;
using NodaTime.TimeZones;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>
/// Reads a file in two steps: first every value is held against its type and its rule, so that all faults are found at once
/// with their lines; then, when there are none, the serializer makes the value.
/// </summary>
/// <param name="path">How faults name the file.</param>
/// <param name="prefix">Where in <see cref="FieldRules"/> the file's root stands; empty for a watch.</param>
internal sealed class CheckedFile(string path, string prefix)
{
    private readonly List<FileFault> faults = [];

    public FileReading<T> Read<T>(string text, Func<T, IEnumerable<(string Field, string Message)>> crossChecks)
        where T : class
    {
        var utf8 = Encoding.UTF8.GetBytes(text.TrimStart('\uFEFF'));
        JsonTree tree;
        try
        {
            tree = JsonTree.Parse(utf8);
        }
        catch (JsonException broken)
        {
            Fault((int)(broken.LineNumber ?? 0) + 1, "", "not JSON: " + FirstSentence(broken.Message));
            return new(null, faults);
        }

        Check(tree, typeof(T), "", nullable: false);
        if (faults.Count > 0) return new(null, faults);
        var value = JsonSerializer.Deserialize<T>(utf8, WatchJson.Options)!;
        foreach (var (field, message) in crossChecks(value)) Fault(LineOf(tree, field), field, message);
        return new(faults.Count > 0 ? null : value, faults);
    }

    private void Check(JsonTree node, Type type, string field, bool nullable)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner) (type, nullable) = (inner, true);
        if (node.Kind == JsonTokenType.Null)
        {
            if (!nullable) Fault(node.Line, field, $"null is not accepted; accepted: {Accepted(type, field)}.");
        }
        else if (type == typeof(Subject))
        {
            CheckSubject(node, field);
        }
        else if (type == typeof(HorizonProfile))
        {
            CheckSkyline(node, field);
        }
        else
        {
            var shown = type == typeof(GeoPosition) ? typeof(WrittenPosition) : type;
            var info = WatchJson.Options.GetTypeInfo(shown);
            if (info.Kind == JsonTypeInfoKind.Object) CheckObject(node, info, field, []);
            else if (info.Kind == JsonTypeInfoKind.Enumerable) CheckItems(node, info.ElementType!, field);
            else CheckScalar(node, type, field);
        }
    }

    private void CheckObject(JsonTree node, JsonTypeInfo info, string field, string[] alsoAllowed)
    {
        if (node.Kind != JsonTokenType.StartObject)
        {
            Fault(node.Line, field, $"not an object; accepted: an object with {Names(info)}.");
            return;
        }

        var seen = new HashSet<string>();
        foreach (var (name, line, value) in node.Members)
        {
            if (!seen.Add(name))
            {
                Fault(line, Join(field, name), "stands twice; accepted: once.");
            }
            else if (info.Properties.FirstOrDefault(property => property.Name == name) is { } property)
            {
                Check(value, property.PropertyType, Join(field, name), property.IsSetNullable && !property.PropertyType.IsValueType);
            }
            else if (!alsoAllowed.Contains(name))
            {
                Fault(line, Join(field, name), $"is not known here; accepted: {Names(info)}.");
            }
        }

        foreach (var missing in info.Properties.Where(property => IsRequired(info, property) && !seen.Contains(property.Name)))
            Fault(
                node.Line,
                Join(field, missing.Name),
                $"is missing; accepted: {Accepted(missing.PropertyType, Join(field, missing.Name))}.");
    }

    private void CheckItems(JsonTree node, Type element, string field)
    {
        if (node.Kind != JsonTokenType.StartArray)
        {
            Fault(node.Line, field, $"not a list; accepted: a list of values, each {Accepted(element, field + "[]")}.");
            return;
        }

        for (var i = 0; i < node.Items.Count; i++) Check(node.Items[i], element, $"{field}[{i}]", nullable: false);
    }

    private void CheckScalar(JsonTree node, Type type, string field)
    {
        object? value;
        try
        {
            if (node.Raw.IsEmpty) throw new JsonException();
            value = JsonSerializer.Deserialize(node.Raw.Span, type, WatchJson.Options);
        }
        catch (Exception wrong) when (wrong is JsonException or DateTimeZoneNotFoundException or InvalidOperationException)
        {
            Fault(node.Line, field, $"{Shown(node)} is not accepted; accepted: {Accepted(type, field)}.");
            return;
        }

        var refused = value switch
        {
            double or int => FieldRules.Numbers.TryGetValue(Rule(field), out var range) && !range.Holds(Convert.ToDouble(value, null)),
            IsoDayOfWeek day => day == IsoDayOfWeek.None,
            string text => FieldRules.Texts.TryGetValue(Rule(field), out var rule) && !rule.Pattern.IsMatch(text),
            _ => false,
        };
        if (refused) Fault(node.Line, field, $"{Shown(node)} is out of range; accepted: {Accepted(type, field)}.");
    }

    private void CheckSubject(JsonTree node, string field)
    {
        var kind = node.Members.FirstOrDefault(member => member.Name == "kind").Value;
        var name = kind?.Kind == JsonTokenType.String ? JsonSerializer.Deserialize<string>(kind.Raw.Span) : null;
        if (name is not null && SubjectConverter.Kinds.TryGetValue(name, out var type))
            CheckObject(node, WatchJson.Options.GetTypeInfo(type), field, ["kind"]);
        else
            Fault(
                kind?.Line ?? node.Line,
                Join(field, "kind"),
                $"{(kind is null ? "is missing" : Shown(kind) + " is not accepted")}; accepted: " +
                $"{string.Join(", ", SubjectConverter.Kinds.Keys)}.");
    }

    private void CheckSkyline(JsonTree node, string field)
    {
        const string accepted = "accepted: a list of [azimuth 0 to below 360, altitude -5 to 90] in degrees, each azimuth once.";
        var azimuths = new HashSet<double>();
        if (node.Kind != JsonTokenType.StartArray) Fault(node.Line, field, "not a list; " + accepted);
        for (var i = 0; i < node.Items.Count; i++)
        {
            var pair = node.Items[i].Items;
            var isPoint =
                pair.Count == 2
                && pair.All(item => item.Kind == JsonTokenType.Number)
                && Figure(pair[0]) is >= 0 and < 360
                && Figure(pair[1]) is >= -5 and <= 90;
            if (!isPoint)
                Fault(node.Items[i].Line, $"{field}[{i}]", "is not a point of a skyline; " + accepted);
            else if (!azimuths.Add(Figure(pair[0])))
                Fault(node.Items[i].Line, $"{field}[{i}]", $"azimuth {Shown(pair[0])} stands twice; {accepted}");
        }

        static double Figure(JsonTree number) => JsonSerializer.Deserialize<double>(number.Raw.Span);
    }

    private static bool IsRequired(JsonTypeInfo info, JsonPropertyInfo property)
    {
        if (property.IsRequired) return true;
        // A positional record's parameter without a default is required too; for structs the serializer would fill in zero.
        var constructor = info
            .Type.GetConstructors(BindingFlags.Public | BindingFlags.Instance)
            .MaxBy(candidate => candidate.GetParameters().Length);
        return constructor?.GetParameters().FirstOrDefault(p => string.Equals(p.Name, property.Name, StringComparison.OrdinalIgnoreCase))
            is { HasDefaultValue: false };
    }

    private string Accepted(Type type, string field)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (FieldRules.Numbers.TryGetValue(Rule(field), out var range)) return (type == typeof(int) ? "a whole number, " : "") + range;
        if (FieldRules.Texts.TryGetValue(Rule(field), out var rule)) return rule.Accepted;
        if (type.IsEnum)
        {
            return string.Join(
                ", ", Enum.GetNames(type).Where(name => name != nameof(IsoDayOfWeek.None)).Select(JsonNamingPolicy.CamelCase.ConvertName));
        }

        if (type == typeof(bool)) return "true or false";
        if (type == typeof(LocalTime)) return "a time of day such as \"19:00\"";
        if (typeof(DateTimeZone).IsAssignableFrom(type)) return "an IANA time zone such as \"Africa/Windhoek\"";
        return type == typeof(string) ? "text"
            : type == typeof(GeoPosition) ? "an object with latitudeDeg, longitudeDeg, elevationM"
            : "an object";
    }

    private string Rule(string field)
    {
        var anyItem = System.Text.RegularExpressions.Regex.Replace(field, @"\[\d+\]", "[]");
        return prefix.Length == 0 ? anyItem : Join(prefix, anyItem);
    }

    private void Fault(int line, string field, string message) => faults.Add(new FileFault(path, line, field, message));

    private static int LineOf(JsonTree tree, string field)
    {
        var line = tree.Line;
        foreach (var name in field.Split('.'))
        {
            var member = tree.Members.FirstOrDefault(member => member.Name == name);
            if (member.Value is null) break;
            (line, tree) = (member.Line, member.Value);
        }

        return line;
    }

    private static string Names(JsonTypeInfo info) =>
        string.Join(", ", info.Properties.Where(property => property.Get is not null).Select(property => property.Name));

    private static string Join(string field, string name) => field.Length == 0 ? name : field + "." + name;

    private static string Shown(JsonTree node) =>
        node.Raw.IsEmpty
            ? node.Kind == JsonTokenType.StartObject
                ? "an object"
                : "a list"
            : node.Raw.Length > 60
                ? "this text"
                : Encoding.UTF8.GetString(node.Raw.Span);

    private static string FirstSentence(string message) => message.Split(" LineNumber:")[0];
}
