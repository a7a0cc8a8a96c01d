using System.Text.Encodings.Web;
using System.Text.Json;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Letters.Calls;

/// <summary>A letter as the JSON body of a call, for a subscriber's own programs: what it is about in figures, and its words.</summary>
public static class LetterCall
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The body, UTF-8. The same letter gives the same bytes.</summary>
    /// <param name="draft">What the letter was written from.</param>
    /// <param name="letter">The letter.</param>
    /// <param name="links">Where links lead.</param>
    public static byte[] Body(LetterDraft draft, Letter letter, LetterLinks links)
    {
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(letter);
        ArgumentNullException.ThrowIfNull(links);
        return JsonSerializer.SerializeToUtf8Bytes(
            new
            {
                Type = "letter." + NameOf(letter.Kind),
                Timestamp = Text(draft.Now),
                Data = new
                {
                    Subject = letter.Message.Subject ?? "",
                    letter.Text,
                    Nights = draft.Orders.Select(order => NightOf(order.Plan, links)),
                },
            },
            Options);
    }

    private static object NightOf(NightPlan plan, LetterLinks links) => new
    {
        Watch = plan.Watch.Id,
        Site = plan.Watch.Site.Name,
        Night = LocalDatePattern.Iso.Format(plan.Night),
        Verdict = plan.Verdict.Class switch { VerdictClass.Go => "go", VerdictClass.Marginal => "marginal", _ => "no-go" },
        Probability = Math.Round(plan.Verdict.Probability.Value, 3),
        LeaveBy = plan.LeaveBy is { } leaveBy ? Text(leaveBy) : null,
        Window = plan.Verdict.Run is { } run ? new { Start = Text(run.Start), End = Text(run.End) } : null,
        Page = links.Night(plan.Watch, plan.Night)?.AbsoluteUri,
    };

    private static string Text(Instant at) => InstantPattern.ExtendedIso.Format(at);

    private static string NameOf(LetterKind kind) => kind switch
    {
        LetterKind.Outlook => "outlook",
        LetterKind.MorningTimeline => "morning-timeline",
        LetterKind.RescheduleWarning => "reschedule-warning",
        LetterKind.StandDown => "stand-down",
        _ => "debrief",
    };
}
