using System.Globalization;
using NightWatch.Planning.Watches;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Letters.Links;

/// <summary>
/// Where the links of a letter lead. Reading a link never changes anything: mail scanners follow them all. Each carries a signature that
/// opens it without signing in, bound to its purpose, the watch and the address: it opens nothing else, and nothing once the address
/// changes.
/// </summary>
/// <param name="pages">Base of the pages; null: no links.</param>
/// <param name="signer">Signs; null: no links.</param>
public sealed class LetterLinks(Uri? pages, ILinkSigner? signer)
{
    private readonly Uri? root = pages is null || pages.AbsoluteUri.EndsWith('/') ? pages : new Uri(pages.AbsoluteUri + "/");

    /// <summary>The whole night: "watches/ID/nights/2027-06-04?k=...".</summary>
    public Uri? Night(Watch watch, LocalDate night) => OfNight(watch, night, "", "");

    /// <summary>What it was really like, as a form: "watches/ID/nights/2027-06-04/debrief?was=clear&amp;k=...".</summary>
    public Uri? Debrief(Watch watch, LocalDate night, string was) => OfNight(watch, night, "/debrief", $"was={Uri.EscapeDataString(was)}&");

    /// <summary>No more of this night, as a form.</summary>
    public Uri? Snooze(Watch watch, LocalDate night) => OfNight(watch, night, "/snooze", "");

    /// <summary>Another night or place instead of this one, as a form.</summary>
    /// <param name="watch">The watch whose night is off.</param>
    /// <param name="night">That night.</param>
    /// <param name="to">The watch to go with instead; may be the same.</param>
    /// <param name="toNight">Its night.</param>
    public Uri? Switch(Watch watch, LocalDate night, Watch to, LocalDate toNight)
    {
        ArgumentNullException.ThrowIfNull(to);
        return OfNight(watch, night, "/switch", $"to={Uri.EscapeDataString(to.Id)}&on={LocalDatePattern.Iso.Format(toNight)}&");
    }

    /// <summary>The dark calendar of the watch's site.</summary>
    public Uri? Season(Watch watch) => OfWatch(watch, "season");

    /// <summary>How the watch's forecasts have held.</summary>
    public Uri? Record(Watch watch) => OfWatch(watch, "record");

    /// <summary>Where the watch is set; it asks its reader to sign in, as the signature of a letter's link does not open it.</summary>
    public Uri? Edit(Watch watch)
    {
        ArgumentNullException.ThrowIfNull(watch);
        return At(_ => $"watches/{Uri.EscapeDataString(watch.Id)}/edit");
    }

    /// <summary>No more letters: a page with a button for readers, a one-click POST (RFC 8058) for mail programs.</summary>
    public Uri? Unsubscribe(Watch watch)
    {
        ArgumentNullException.ThrowIfNull(watch);
        return At(s => $"unsubscribe?w={Uri.EscapeDataString(watch.Id)}&k={UnsubscribeKey(s, watch)}");
    }

    /// <summary>No more weekly digests: the same page and POST, of the digest alone.</summary>
    public Uri? StopDigest(Watch watch)
    {
        ArgumentNullException.ThrowIfNull(watch);
        return At(s => $"unsubscribe?w={Uri.EscapeDataString(watch.Id)}&of=digest&k={UnsubscribeKey(s, watch)}");
    }

    /// <summary>The subscriber's nights as a calendar to follow: "calendar/TOKEN.ics".</summary>
    /// <param name="token">Its token, which the feeds give out.</param>
    public Uri? CalendarFeed(string token) => At(_ => $"calendar/{token}.ics");

    /// <summary>Signature of one watch and night, which opens the night's page and everything below it.</summary>
    public static string NightKey(ILinkSigner signer, Watch watch, LocalDate night) =>
        signer.Sign("night", watch.Id, watch.Subscriber.Key(), LocalDatePattern.Iso.Format(night));

    /// <summary>Signature that opens a watch's season and record pages.</summary>
    public static string WatchKey(ILinkSigner signer, Watch watch) => signer.Sign("watch", watch.Id, watch.Subscriber.Key());

    /// <summary>Signature that stops the letters.</summary>
    public static string UnsubscribeKey(ILinkSigner signer, Watch watch) => signer.Sign("unsubscribe", watch.Id, watch.Subscriber.Key());

    /// <summary>Token of a subscriber's calendar feed; a revoked feed has the token of its next generation.</summary>
    public static string CalendarKey(ILinkSigner signer, string address, long generation = 0) =>
        signer.Sign("calendar", Subscriber.KeyOf(address), generation.ToString(CultureInfo.InvariantCulture));

    private Uri? OfNight(Watch watch, LocalDate night, string below, string query)
    {
        ArgumentNullException.ThrowIfNull(watch);
        return At(s =>
            $"watches/{Uri.EscapeDataString(watch.Id)}/nights/{LocalDatePattern.Iso.Format(night)}{below}?" +
            $"{query}k={NightKey(s, watch, night)}"
        );
    }

    private Uri? OfWatch(Watch watch, string page)
    {
        ArgumentNullException.ThrowIfNull(watch);
        return At(s => $"watches/{Uri.EscapeDataString(watch.Id)}/{page}?k={WatchKey(s, watch)}");
    }

    private Uri? At(Func<ILinkSigner, string> path) => root is null || signer is null ? null : new Uri(root, path(signer));
}
