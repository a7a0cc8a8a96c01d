using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Extensions.Primitives;

namespace NightWatch.Pages.Watches;

/// <summary>What stands in the fields of a form: as typed, also where it is wrong, so that nobody types it twice.</summary>
public sealed class FormValues
{
    private readonly Dictionary<string, StringValues> values = [];

    /// <summary>Of a form that was sent.</summary>
    public static FormValues Of(IFormCollection form)
    {
        var values = new FormValues();
        foreach (var (name, value) in form) values.values[name] = value;
        return values;
    }

    /// <summary>The one value of a field; empty: none.</summary>
    public string this[string name]
    {
        get => values.TryGetValue(name, out var value) ? value.ToString().Trim() : "";
        set => values[name] = value;
    }

    /// <summary>All values of a field of several boxes.</summary>
    public IReadOnlyList<string> All(string name) => values.TryGetValue(name, out var value) ? [.. value.OfType<string>()] : [];

    public void Set(string name, IReadOnlyList<string> all) => values[name] = all.ToArray();

    /// <summary>Whether a box is ticked.</summary>
    public bool IsOn(string name) => this[name] == "on";

    /// <summary>The number in a field, with a decimal point or comma; null: nothing or no number.</summary>
    public double? Number(string name) =>
        double.TryParse(Plain(this[name]), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : null;

    /// <summary>
    /// A field's content as JSON: a number where it is one, otherwise the text, so that the reader says what is accepted.
    /// </summary>
    public JsonNode? Json(string name) => this[name].Length == 0 ? null : JsonOf(this[name]);

    /// <summary>The same of one piece of text.</summary>
    public static JsonNode JsonOf(string text) =>
        double.TryParse(Plain(text), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number == Math.Floor(number) && Math.Abs(number) < 1e9
                ? JsonValue.Create((int)number)
                : JsonValue.Create(number)
            : JsonValue.Create(text);

    // A minus as typographers write it, a comma as half of the world does.
    private static string Plain(string text) => text.Replace('\u2212', '-').Replace(',', '.');
}
