using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Planning.Nights;
using NightWatch.Service.Wording;

namespace NightWatch.Service.Commands.Plans;

/// <summary>
/// The plan document: the decision first, the windows together, then every other part of the plan under its own name, so that a part
/// added to the plan is in the document without a word here.
/// </summary>
internal static class PlanDocument
{
    public static JsonObject Of(NightPlan plan, IReadOnlyList<NightPlan> later)
    {
        var parts = Node(plan)!.AsObject();
        var document = new JsonObject
        {
            ["night"] = Node(plan.Night),
            ["zone"] = plan.Watch.Site.Zone.Id,
            ["madeAt"] = Node(plan.MadeAt),
            ["verdict"] = Node(plan.Verdict.Class),
            ["probability"] = Node(plan.Verdict.Probability),
            ["deciding"] = Node(plan.Verdict.Deciding.Factor),
            ["reasons"] = Node(plan.Verdict.Reasons),
            ["windows"] = new JsonObject
            {
                ["span"] = Node(plan.Sky.Span),
                ["astronomicalNight"] = Node(plan.Sky.AstronomicalNight),
                ["dark"] = Node(plan.Sky.DarkWindows),
                ["subject"] = Node(plan.Sky.SubjectWindows),
                ["shooting"] = Node(plan.Sky.ShootingWindows),
                ["run"] = Node(plan.Verdict.Run),
            },
        };
        foreach (var (name, part) in parts.ToList())
        {
            if (name is "verdict" || document.ContainsKey(name)) continue;
            parts.Remove(name);
            document[name] = part;
        }

        document["laterNights"] = new JsonArray([.. later.Select(Later)]);
        document["sources"] = Sources();
        return document;
    }

    private static JsonNode Later(NightPlan plan) => new JsonObject
    {
        ["night"] = Node(plan.Night),
        ["isFree"] = Alternatives.IsFree(plan),
        ["verdict"] = Node(plan.Verdict.Class),
        ["probability"] = Node(plan.Verdict.Probability),
        ["run"] = Node(plan.Verdict.Run),
        ["leaveBy"] = Node(plan.LeaveBy),
        ["deciding"] = Node(plan.Verdict.Deciding),
    };

    /// <summary>Of the parts that are lists or shared; every other part names its own.</summary>
    private static JsonObject Sources() => new()
    {
        ["sky"] = "Sun by simplified VSOP2000, Moon by ELP/MPP02, topocentric on WGS84; conventions as the sky command's",
        ["conditions.weather"] = "The feed's values: instants interpolated to the step, periods by their overlap with it; null is unknown",
        ["conditions.lens"] = "As lens.source",
        ["conditions.skyMag"] = "Clear sky: as skyBrightness.source, with twilight of the Sun's altitude",
        ["conditions.moonBrighteningMag"] = "Krisciunas and Schaefer 1991, PASP 103, 1033",
        ["conditions.contrast"] = "Subject's light dimmed by Kasten and Young 1989 air mass over the sky's light, against overhead under a natural sky of 22.0 mag/arcsec2",
        ["conditions.skyShare"] = "As skyLevel.source",
        ["summary"] = "Means and extremes of the conditions over the run",
        ["timeline"] = "Each entry's own reason; road, set-up and test times from the watch, packing and sleep by common practice",
        ["laterNights"] = "The same evaluation of later nights with the same answer of the feed",
    };

    private static JsonNode? Node<T>(T value) => JsonSerializer.SerializeToNode(value, Document.Options);
}
