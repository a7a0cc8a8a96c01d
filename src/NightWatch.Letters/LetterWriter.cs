using NightWatch.Letters.Drafts;
using NightWatch.Letters.Layout;
using NightWatch.Letters.Links;
using NightWatch.Letters.Mail;
using NightWatch.Letters.Notices;
using NightWatch.Letters.Views;
using NightWatch.Pictures;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Letters;

/// <summary>Writes letters. Pure but for the template renderer it owns: the same draft gives the same bytes.</summary>
public sealed class LetterWriter(LetterHead head) : IDisposable
{
    private readonly HtmlLetter layout = new();

    /// <summary>Who sends.</summary>
    public LetterHead Head { get; } = head;

    /// <summary>Writes one letter.</summary>
    /// <exception cref="ArgumentException">The draft has no order, orders of several kinds or subscribers, or an address that is
    /// none.</exception>
    public async Task<Letter> WriteAsync(LetterDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        Check(draft);
        cancellationToken.ThrowIfCancellationRequested();
        var ids = new LetterIds(Head.MessageIdDomain, Head.IdKey);
        var key = LetterIds.DedupeKey(draft);
        var view = LetterViews.Of(draft, Head);
        LetterPicture?[] charts =
        [
            .. view.Nights.Select(
                (night, i) => night.ChartSays is null ? null : new LetterPicture(ids.Picture(key, i + 1), NightChart.Png(night.Plan))),
        ];
        LetterPicture?[] frames =
        [
            .. view.Nights.Select(
                (night, i) =>
                    night.FrameSays is not null && FrameChart.Png(night.Plan) is { } png
                        ? new LetterPicture(ids.Picture(key, charts.Length + i + 1), png)
                        : null),
        ];
        var html = await layout.OfAsync(view, Sources(charts), Sources(frames));
        var text = TextLetter.Of(view);
        LetterPicture[] pictures = [.. charts.Concat(frames).OfType<LetterPicture>()];
        var message = LetterMessage.Of(draft, Head, view, ids, text, html, pictures);
        var whole = pictures.Aggregate(
            html,
            (page, p) =>
                page.Replace($"cid:{p.ContentId}", $"data:image/png;base64,{Convert.ToBase64String(p.Png)}", StringComparison.Ordinal));
        return new Letter(key, view.Kind, message, whole, text, draft.Orders.Max(o => o.NotAfter));
    }

    /// <summary>Asks whether an address wants the letters of a new watch.</summary>
    public Task<Notice> WriteConfirmationAsync(ConfirmationDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(
            new NoticeDraft("Confirmation", draft.Key, new Subscriber("", draft.Address), draft.View, draft.Now, draft.Until),
            cancellationToken);
    }

    /// <summary>Opens the way to one's own watches.</summary>
    public Task<Notice> WriteSignInAsync(SignInDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(
            new NoticeDraft("SignIn", draft.Key, new Subscriber("", draft.Address), draft.View, draft.Now, draft.Until), cancellationToken);
    }

    /// <summary>Writes the week's digest.</summary>
    /// <exception cref="ArgumentException">No watch, or watches of several subscribers.</exception>
    public Task<Notice> WriteDigestAsync(DigestDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        if (draft.Watches.Count == 0) throw new ArgumentException("A digest needs a watch.", nameof(draft));
        var to = draft.Watches[0].Subscriber;
        if (draft.Watches.Any(watch => watch.Subscriber.Key() != to.Key()))
            throw new ArgumentException("A digest has one subscriber.", nameof(draft));
        return WriteAsync(
            new NoticeDraft("Digest", draft.Key, to, DigestView.Of(draft, Head), draft.Now, draft.NotAfter)
            {
                IsOfTheList = true,
                Unsubscribe = Head.Links.StopDigest(draft.Watches[0])?.AbsoluteUri ?? Head.ListUnsubscribe,
            },
            cancellationToken);
    }

    /// <summary>A letter that says nothing but that letters arrive.</summary>
    /// <param name="address">The recipient's address.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    public Task<Notice> WriteTestAsync(string address, Instant now, CancellationToken cancellationToken = default)
    {
        var test = new TestNotice(Head.From.Address, address, now);
        return WriteAsync(
            new NoticeDraft("Test", test.Key, new Subscriber("", address), test.View, now, now + Duration.FromHours(1))
            {
                IsOfTheList = true,
                Unsubscribe = Head.ListUnsubscribe,
            },
            cancellationToken);
    }

    /// <inheritdoc/>
    public void Dispose() => layout.Dispose();

    private async Task<Notice> WriteAsync(NoticeDraft draft, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var (html, text) = (await layout.OfAsync(draft.View), TextNotice.Of(draft.View));
        var message = LetterMessage.Of(draft, Head, new LetterIds(Head.MessageIdDomain, Head.IdKey), text, html);
        return new Notice(draft.Key, draft.Kind, message, html, text, draft.NotAfter);
    }

    private static string[] Sources(IEnumerable<LetterPicture?> pictures) =>
        [.. pictures.Select(picture => picture is null ? "" : $"cid:{picture.ContentId}")];

    private static void Check(LetterDraft draft)
    {
        if (draft.Orders.Count == 0) throw new ArgumentException("A letter needs at least one order.", nameof(draft));
        var first = draft.Orders[0];
        if (draft.Orders.Any(o => o.Kind != first.Kind)) throw new ArgumentException("A letter has one kind.", nameof(draft));
        if (draft.Orders.Any(o => o.Plan.Watch.Subscriber.Key() != first.Plan.Watch.Subscriber.Key()))
            throw new ArgumentException("A letter has one subscriber.", nameof(draft));
    }
}
