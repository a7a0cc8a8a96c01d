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

    /// <summary>Makes the view.</summary>
    public static LetterView Of(LetterDraft draft, LetterHead head)
    {
        var links = head.Links;
        NightContext[] nights = [.. draft.Orders.Select(order => new NightContext(
            order, draft.Alternatives.TryGetValue(order.Plan.Watch.Id, out var found) ? found : [], draft.Now, links)
        {
            Track = draft.Tracks.GetValueOrDefault(order.Plan.Watch.Id, TrackRecord.None),
        })];
        var (language, speech) = (nights[0].Language, nights[0].Speech);
        var stop = draft.UnsubscribeAt(head);
        var name = PlainWords.OneLine(nights[0].Plan.Watch.Subscriber.Name);
        return new LetterView
        {
            Language = language,
            Kind = draft.Orders[0].Kind,
            Subject = SubjectLine.Of(nights[0], nights.Length - 1),
            Greeting = name.Length == 0 ? "" : language.Greeting(PlainWords.Shortened(name, 64)),
            Nights = EachSourceOnce(nights.Select((night, i) => Of(night, i))),
            News = draft.TellsNews ? NewsView.Of(nights[0].Plan.Watch, links) : null,
            Cautions = language.StandingCautions(onPage: false),
            WrittenAt = language.Written(draft.Now, manySites: false, speech),
            UnsubscribePage = Uri.TryCreate(stop, UriKind.Absolute, out var page) && page.Scheme is "https" or "http" ? page : null,
            Unsubscribe = stop is null ? null : language.StopLettersAt(stop),
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
        return
        [
            .. nights.Select(night =>
                night with
                {
                    Reasons =
                    [
                        .. night.Reasons.Select(reason =>
                            reason.Source is { } source && !told.Add(source) ? reason with { Source = null } : reason),
                    ],
                }),
        ];
    }
}
