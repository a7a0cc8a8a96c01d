using NodaTime;
using NodaTime.Text;

namespace NightWatch.Alerts.Letters;

/// <summary>Where the links of a letter lead. Reading a link never changes anything: mail scanners follow them all.</summary>
/// <param name="pages">Base of the pages; null: no links.</param>
public sealed class LetterLinks(Uri? pages)
{
    private readonly Uri? root = pages is null || pages.AbsoluteUri.EndsWith('/') ? pages : new Uri(pages.AbsoluteUri + "/");

    /// <summary>The whole night: "watches/ID/nights/2027-06-04".</summary>
    public Uri? Night(string watchId, LocalDate night) => At(watchId, night, "");

    /// <summary>What it was really like, as a form: "watches/ID/nights/2027-06-04/debrief?was=clear".</summary>
    public Uri? Debrief(string watchId, LocalDate night, string was) => At(watchId, night, $"/debrief?was={Uri.EscapeDataString(was)}");

    private Uri? At(string watchId, LocalDate night, string tail) =>
        root is null ? null : new Uri(root, $"watches/{Uri.EscapeDataString(watchId)}/nights/{LocalDatePattern.Iso.Format(night)}{tail}");
}
