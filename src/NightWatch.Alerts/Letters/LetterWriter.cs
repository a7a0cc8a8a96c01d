using MimeKit;
using NightWatch.Alerts.Letters.Layout;
using NightWatch.Alerts.Letters.Mail;
using NightWatch.Alerts.Letters.Notices;
using NightWatch.Alerts.Letters.Views;
using NightWatch.Alerts.Pictures;
using NightWatch.Alerts.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Alerts.Letters;

/// <summary>Who sends.</summary>
/// <param name="From">Header From; the calendar's organizer.</param>
/// <param name="MessageIdDomain">Right side of the Message-IDs.</param>
/// <param name="PagesBase">Where links lead; null: no pages, no links.</param>
/// <param name="ListUnsubscribe">Mail address or URL for List-Unsubscribe where there are no pages; null: none.</param>
public sealed record LetterHead(MailboxAddress From, string MessageIdDomain, Uri? PagesBase = null, string? ListUnsubscribe = null)
{
    /// <summary>Secret of the instance behind Message-IDs and calendar UIDs; empty: plain hashes. Changing it starts new threads and entries.</summary>
    public ReadOnlyMemory<byte> IdKey { get; init; }

    /// <summary>Signs the links; null: no links, wherever the pages are.</summary>
    public ILinkSigner? Signer { get; init; }

    /// <summary>Where links lead.</summary>
    public LetterLinks Links => new(PagesBase, Signer);
}

/// <summary>Another night here or another site tonight, checked by the same code.</summary>
/// <param name="Plan">Its whole plan.</param>
/// <param name="DriveKm">One way, km; null for the same site.</param>
public sealed record Alternative(NightPlan Plan, double? DriveKm);

/// <summary>What a letter is written from. Several orders of one kind to one subscriber share a letter.</summary>
public sealed record LetterDraft
{
    /// <summary>One or more orders of the same kind, the best night first.</summary>
    public required IReadOnlyList<LetterOrder> Orders { get; init; }

    /// <summary>Ranked alternatives by watch id; empty where there are none.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Alternative>> Alternatives { get; init; } = new Dictionary<string, IReadOnlyList<Alternative>>();

    /// <summary>What came of the watches' earlier calls, by watch id; empty where nothing is known.</summary>
    public IReadOnlyDictionary<string, TrackRecord> Tracks { get; init; } = new Dictionary<string, TrackRecord>();

    /// <summary>Where this subscriber stops the letters, an https URL or a mail address; null: the pages, or else as the head says.</summary>
    public string? Unsubscribe { get; init; }

    /// <summary>The clock reading: header Date and "written at".</summary>
    public required Instant Now { get; init; }

    /// <summary>Where the reader of this letter stops the letters; null: nowhere.</summary>
    /// <param name="head">Who sends.</param>
    internal string? UnsubscribeAt(LetterHead head) => Unsubscribe ?? head.Links.Unsubscribe(Orders[0].Plan.Watch)?.AbsoluteUri ?? head.ListUnsubscribe;
}

/// <summary>A finished letter.</summary>
/// <param name="DedupeKey">kind|watches|night|recipient|revision; unique in the outbox.</param>
/// <param name="Kind">Which.</param>
/// <param name="Message">Ready to send; the same bytes for every attempt.</param>
/// <param name="Html">The HTML part with its pictures inlined as data URIs, for the rehearsal's folder.</param>
/// <param name="Text">The plain text part.</param>
/// <param name="NotAfter">Later than this it is dropped.</param>
public sealed record Letter(string DedupeKey, LetterKind Kind, MimeMessage Message, string Html, string Text, Instant NotAfter);

/// <summary>Writes letters. Pure but for the template renderer it owns: the same draft gives the same bytes.</summary>
public sealed class LetterWriter(LetterHead head) : IDisposable
{
    private readonly HtmlLetter layout = new();

    /// <summary>Who sends.</summary>
    public LetterHead Head { get; } = head;

    /// <summary>Writes one letter.</summary>
    /// <exception cref="ArgumentException">The draft has no order, orders of several kinds or subscribers, or an address that is none.</exception>
    public async Task<Letter> WriteAsync(LetterDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        Check(draft);
        cancellationToken.ThrowIfCancellationRequested();
        var ids = new LetterIds(Head.MessageIdDomain, Head.IdKey);
        var key = LetterIds.DedupeKey(draft);
        var view = LetterViews.Of(draft, Head);
        LetterPicture?[] charts = [.. view.Nights.Select((night, i) => night.ChartSays is null ? null : new LetterPicture(ids.Picture(key, i + 1), NightChart.Png(night.Plan)))];
        LetterPicture?[] frames =
        [
            .. view.Nights.Select((night, i) => night.FrameSays is not null && FrameChart.Png(night.Plan) is { } png ? new LetterPicture(ids.Picture(key, charts.Length + i + 1), png) : null),
        ];
        var html = await layout.OfAsync(view, Sources(charts), Sources(frames));
        var text = TextLetter.Of(view);
        LetterPicture[] pictures = [.. charts.Concat(frames).OfType<LetterPicture>()];
        var message = LetterMessage.Of(draft, Head, view, ids, text, html, pictures);
        var whole = pictures.Aggregate(html, (page, p) => page.Replace($"cid:{p.ContentId}", $"data:image/png;base64,{Convert.ToBase64String(p.Png)}", StringComparison.Ordinal));
        return new Letter(key, view.Kind, message, whole, text, draft.Orders.Max(o => o.NotAfter));
    }

    /// <summary>Asks whether an address wants the letters of a new watch.</summary>
    public Task<Notice> WriteConfirmationAsync(ConfirmationDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(new NoticeDraft("Confirmation", draft.Key, new Subscriber("", draft.Address), draft.View, draft.Now, draft.Until), cancellationToken);
    }

    /// <summary>Opens the way to one's own watches.</summary>
    public Task<Notice> WriteSignInAsync(SignInDraft draft, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(new NoticeDraft("SignIn", draft.Key, new Subscriber("", draft.Address), draft.View, draft.Now, draft.Until), cancellationToken);
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
    /// <param name="address">To whom.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Stops.</param>
    public Task<Notice> WriteTestAsync(string address, Instant now, CancellationToken cancellationToken = default)
    {
        var test = new TestNotice(Head.From.Address, address, now);
        return WriteAsync(new NoticeDraft("Test", test.Key, new Subscriber("", address), test.View, now, now + Duration.FromHours(1)) { IsOfTheList = true, Unsubscribe = Head.ListUnsubscribe }, cancellationToken);
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

    private static string[] Sources(IEnumerable<LetterPicture?> pictures) => [.. pictures.Select(picture => picture is null ? "" : $"cid:{picture.ContentId}")];

    private static void Check(LetterDraft draft)
    {
        if (draft.Orders.Count == 0) throw new ArgumentException("A letter needs at least one order.", nameof(draft));
        var first = draft.Orders[0];
        if (draft.Orders.Any(o => o.Kind != first.Kind)) throw new ArgumentException("A letter has one kind.", nameof(draft));
        if (draft.Orders.Any(o => o.Plan.Watch.Subscriber.Key() != first.Plan.Watch.Subscriber.Key())) throw new ArgumentException("A letter has one subscriber.", nameof(draft));
    }
}
