using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>From a draft to everything its letter says.</summary>
internal static class LetterViews
{
    /// <summary>Beyond this many nights the rest of a letter is short, so that it stays under 60 KB.</summary>
    public const int WholeNights = 2;

    private static readonly string[] LetterCautions = CautionsOf("letter");

    /// <summary>What stays true of every night out.</summary>
    /// <param name="what">"letter", "page".</param>
    public static string[] CautionsOf(string what) =>
    [
        $"This {what} is guidance, not a warning service. Your local weather service, the park and the emergency authorities have the last word; where they say otherwise, follow them.",
        "Thunder heard is reason enough to leave rail and tripod and get into a car or a building. Keep clear of water and edges in the dark, dress for the coldest hour, and tell someone where you are and when you will be back.",
        "Do not drive tired: sleep first. Keep batteries dry, undamaged and out of reach of frost and heat.",
    ];

    /// <summary>Makes the view.</summary>
    public static LetterView Of(LetterDraft draft, LetterHead head)
    {
        var links = head.Links;
        NightContext[] nights = [.. draft.Orders.Select(order => new NightContext(
            order, draft.Alternatives.TryGetValue(order.Plan.Watch.Id, out var found) ? found : [], draft.Now, links)
        {
            Track = draft.Tracks.GetValueOrDefault(order.Plan.Watch.Id, TrackRecord.None),
        })];
        var name = PlainWords.OneLine(nights[0].Plan.Watch.Subscriber.Name);
        return new LetterView
        {
            Kind = draft.Orders[0].Kind,
            Subject = SubjectLine.Of(nights[0], nights.Length - 1),
            Greeting = name.Length == 0 ? "" : $"{PlainWords.Shortened(name, 64)},",
            Nights = EachSourceOnce(nights.Select((night, i) => Of(night, i))),
            Cautions = LetterCautions,
            WrittenAt = $"Written {nights[0].Clock.WithOffset(draft.Now)}. Clock times are local at the site.",
            UnsubscribePage = Uri.TryCreate(draft.UnsubscribeAt(head), UriKind.Absolute, out var page) && page.Scheme is "https" or "http" ? page : null,
            Unsubscribe = draft.UnsubscribeAt(head) is { } stop ? $"Stop these letters: {stop}" : null,
        };
    }

    // The pictures are most of a letter's bytes, and the best night is the one to be looked at; the others have theirs on their pages.
    private static NightView Of(NightContext night, int place)
    {
        var view = NightViews.Of(night, isShort: place >= WholeNights);
        return place == 0 ? view : view with { ChartSays = null, FrameSays = null };
    }

    // The nights of a letter share most formulas; naming each once keeps the letter short.
    private static IReadOnlyList<NightView> EachSourceOnce(IEnumerable<NightView> nights)
    {
        var told = new HashSet<string>();
        return [.. nights.Select(night => night with { Reasons = [.. night.Reasons.Select(reason => reason.Source is { } source && !told.Add(source) ? reason with { Source = null } : reason)] })];
    }
}
