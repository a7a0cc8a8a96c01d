using MimeKit;
using NightWatch.Alerts.Letters.Layout;
using NightWatch.Alerts.Letters.Mail;
using NightWatch.Alerts.Letters.Views;
using NightWatch.Alerts.Pictures;
using NightWatch.Alerts.Policy;
using NightWatch.Planning.Nights;
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
    /// <summary>Device pixels a logical pixel: lines and a few words need less than the chart's many curves, and a mail should stay small.</summary>
    private const double FrameScale = 1.4;

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
            .. view.Nights.Select((night, i) => night.FrameSays is not null && FrameChart.Png(night.Plan, FrameScale) is { } png ? new LetterPicture(ids.Picture(key, charts.Length + i + 1), png) : null),
        ];
        var html = await layout.OfAsync(view, Sources(charts), Sources(frames));
        var text = TextLetter.Of(view);
        LetterPicture[] pictures = [.. charts.Concat(frames).OfType<LetterPicture>()];
        var message = LetterMessage.Of(draft, Head, view, ids, text, html, pictures);
        var whole = pictures.Aggregate(html, (page, p) => page.Replace($"cid:{p.ContentId}", $"data:image/png;base64,{Convert.ToBase64String(p.Png)}", StringComparison.Ordinal));
        return new Letter(key, view.Kind, message, whole, text, draft.Orders.Max(o => o.NotAfter));
    }

    /// <inheritdoc/>
    public void Dispose() => layout.Dispose();

    private static string[] Sources(IEnumerable<LetterPicture?> pictures) => [.. pictures.Select(picture => picture is null ? "" : $"cid:{picture.ContentId}")];

    private static void Check(LetterDraft draft)
    {
        if (draft.Orders.Count == 0) throw new ArgumentException("A letter needs at least one order.", nameof(draft));
        var first = draft.Orders[0];
        if (draft.Orders.Any(o => o.Kind != first.Kind)) throw new ArgumentException("A letter has one kind.", nameof(draft));
        if (draft.Orders.Any(o => o.Plan.Watch.Subscriber.Address != first.Plan.Watch.Subscriber.Address)) throw new ArgumentException("A letter has one subscriber.", nameof(draft));
    }
}
