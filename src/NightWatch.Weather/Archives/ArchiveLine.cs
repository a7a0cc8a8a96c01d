using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Archives;

/// <summary>One line of an archive, a JSON object; each reading refuses in one sentence what it cannot take.</summary>
internal sealed class ArchiveLine : IDisposable
{
    /// <summary>How an archive writes its times.</summary>
    public static readonly InstantPattern ToTheMinute = InstantPattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm'Z'");

    private readonly int number;
    private readonly JsonDocument document;

    public ArchiveLine(string text, int number)
    {
        this.number = number;
        try
        {
            document = JsonDocument.Parse(text);
        }
        catch (JsonException broken)
        {
            throw new ArchiveFormatException(
                FormattableString.Invariant($"line {number}: this is no JSON; accepted: one object a line."), broken);
        }

        if (document.RootElement.ValueKind == JsonValueKind.Object) return;
        document.Dispose();
        throw Fault("", "this is no object; accepted: one object a line");
    }

    public void Dispose() => document.Dispose();

    public ArchiveFormatException Fault(string field, string what) => new(number, field, what);

    /// <summary>A word that must be there.</summary>
    public string Text(string field) =>
        Known(field) is { ValueKind: JsonValueKind.String } value && value.GetString() is { Length: > 0 } text
            ? text : throw Fault(field, "it is missing; accepted: a text");

    /// <summary>A number that must be there.</summary>
    public double Number(string field, double least, double most) =>
        Known(field) is { ValueKind: JsonValueKind.Number } value && value.TryGetDouble(out var number) && number >= least && number <= most
            ? number
            : throw Fault(field, FormattableString.Invariant($"accepted: a number from {least} to {most}"));

    /// <summary>A number that may be null or missing: then it is unknown.</summary>
    public double? NumberOrUnknown(string field) =>
        Known(field) is { } value ? NumberOf(value) ?? throw Fault(field, "accepted: a number, or null for unknown") : null;

    /// <summary>A time that must be there.</summary>
    public Instant Time(string field)
    {
        var text = Text(field);
        if (ToTheMinute.Parse(text) is { Success: true } minute) return minute.Value;
        return InstantPattern.ExtendedIso.Parse(text) is { Success: true } second
            ? second.Value : throw Fault(field, $"{text} is no time; accepted: UTC such as 2024-05-03T19:00Z");
    }

    /// <summary>A row of numbers, null where unknown; null: the whole row is missing.</summary>
    public double?[]? Row(string field)
    {
        if (Known(field) is not { } value) return null;
        if (value.ValueKind != JsonValueKind.Array) throw Fault(field, "accepted: an array of numbers, null where unknown");
        var row = new double?[value.GetArrayLength()];
        var at = 0;
        foreach (var item in value.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.Null)
                row[at] = NumberOf(item) ?? throw Fault(field, $"value {at + 1} is no number; accepted: numbers, null where unknown");
            at++;
        }

        return row;
    }

    private static double? NumberOf(JsonElement value) =>
        value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number) ? number : null;

    private JsonElement? Known(string field) =>
        document.RootElement.TryGetProperty(field, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;
}
