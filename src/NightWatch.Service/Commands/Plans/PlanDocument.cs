using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Letters.Views;
using NightWatch.Planning.Nights;
using NightWatch.Words;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Plans;

/// <summary>
/// The plan document: the decision first, the windows together, then every other part of the plan under its own name, so that a part
/// added to the plan is in the document without a word here.
/// </summary>
internal static class PlanDocument
{
    public static JsonObject Of(NightPlan plan, IReadOnlyList<NightPlan> later)
    {
        var says = new PlanSayings(plan.Watch.Site.Zone);
        var parts = Node(plan)!.AsObject();
        parts["cautions"] = Node(plan.Cautions.Select(says.Of));
        parts["timeline"] = Node(plan.Timeline.Select(says.Of));
        parts["packing"] = Node(plan.Packing.Select(says.Of));
        parts["summary"] = Node(says.Of(plan.Summary));
        var document = new JsonObject
        {
            ["night"] = Node(plan.Night),
            ["zone"] = plan.Watch.Site.Zone.Id,
            ["madeAt"] = Node(plan.MadeAt),
            ["verdict"] = Node(plan.Verdict.Class),
            ["probability"] = Node(says.Of(plan.Verdict.Probability)),
            ["usableMinutes"] = Node(plan.Verdict.ForecastMin),
            ["needs"] = Node(plan.Verdict.Needs.Select(says.Of)),
            ["tradeOff"] = Node(plan.Verdict.TradeOff),
            ["deciding"] = Node(plan.Verdict.Deciding.Factor),
            ["reasons"] = Node(plan.Verdict.Reasons.Select(says.Of)),
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

        document["laterNights"] = new JsonArray([.. later.Select(night => Later(night, says))]);
        document["sources"] = new JsonObject(
            PlanSources.Shared(English.Instance).Select(source => KeyValuePair.Create(source.Key, (JsonNode?)source.Value)));
        return document;
    }

    private static JsonObject Later(NightPlan plan, PlanSayings says) => new JsonObject
    {
        ["night"] = Node(plan.Night),
        ["isFree"] = Alternatives.IsFree(plan),
        ["verdict"] = Node(plan.Verdict.Class),
        ["probability"] = Node(says.Of(plan.Verdict.Probability)),
        ["usableMinutes"] = Node(plan.Verdict.ForecastMin),
        ["run"] = Node(plan.Verdict.Run),
        ["leaveBy"] = Node(plan.LeaveBy),
        ["deciding"] = Node(says.Of(plan.Verdict.Deciding)),
    };

    private static JsonNode? Node<T>(T value) => JsonSerializer.SerializeToNode(value, Document.Options);
}
