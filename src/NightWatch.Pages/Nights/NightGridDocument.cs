using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Letters.Views;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Nights;
using NightWatch.Words.Documents;

namespace NightWatch.Pages.Nights;

/// <summary>
/// The night's grid as the page's script reads it out: the conditions of the plan document turned into columns, which are half as long,
/// each with the words for its figures. Figures are written by the same serializer as the plan document's.
/// </summary>
internal static class NightGridDocument
{
    private static readonly JsonSerializerOptions Compact = new(Document.Options) { WriteIndented = false };

    /// <summary>One line of JSON that is safe inside a script element; "null" where there is no grid.</summary>
    /// <param name="plan">The night.</param>
    /// <param name="readings">Its quantities.</param>
    /// <param name="clock">The clock time of each step.</param>
    public static string Of(NightPlan plan, IReadOnlyList<NightReading> readings, IReadOnlyList<string> clock)
    {
        var document = new JsonObject
        {
            ["start"] = plan.Conditions.Count > 0 ? Node(plan.Conditions[0].At) : null,
            ["stepS"] = NightGrid.Step.TotalSeconds,
            ["clock"] = Node(clock),
            ["readings"] = new JsonArray([.. readings.Select(Reading)]),
        };
        return Safe(document);
    }

    /// <summary>The subject's places in the frame, one a point of the plan document's framing.path.</summary>
    public static string OfFrames(IReadOnlyList<NightWatch.Pictures.FrameMark> marks) =>
        Safe(
            new JsonArray([
                .. marks.Select(mark =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["at"] = Node(mark.At),
                            ["shot"] = mark.Shot,
                            ["x"] = Pixels(mark.X),
                            ["y"] = Pixels(mark.Y),
                            ["says"] = mark.Says,
                        }),
            ]));

    private static JsonNode Reading(NightReading reading) => new JsonObject
    {
        ["path"] = reading.Path,
        ["name"] = reading.Name,
        ["key"] = reading.IsKey,
        ["scale"] = reading.Measure.Scale,
        ["offset"] = reading.Measure.Offset,
        ["decimals"] = reading.Measure.Decimals,
        ["suffix"] = reading.Measure.Suffix,
        ["values"] = reading.Values.All(value => value is null) ? null : Node(reading.Values),
    };

    private static JsonNode? Pixels(double? value) => value is { } px ? Math.Round(px, 1) : null;

    private static JsonNode? Node<T>(T value) => JsonSerializer.SerializeToNode(value, Compact);

    // "</script" and "<!--" would end or change the element (HTML, "restrictions for contents of script elements").
    private static string Safe(JsonNode document) => document.ToJsonString(Compact).Replace("<", "\\u003c", StringComparison.Ordinal);
}
