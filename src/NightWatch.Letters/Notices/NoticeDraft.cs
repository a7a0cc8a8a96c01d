using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Letters.Notices;

/// <summary>What a notice is built from.</summary>
/// <param name="Kind">For lists and metrics.</param>
/// <param name="Key">Unique in the outbox.</param>
/// <param name="To">The recipient.</param>
/// <param name="View">What it says.</param>
/// <param name="Now">The clock reading.</param>
/// <param name="NotAfter">Later than this it is dropped.</param>
internal sealed record NoticeDraft(string Kind, string Key, Subscriber To, NoticeView View, Instant Now, Instant NotAfter)
{
    /// <summary>It comes again and again, as the letters about nights do, and can be stopped like them.</summary>
    public bool IsOfTheList { get; init; }

    /// <summary>Where it is stopped; null: nowhere.</summary>
    public string? Unsubscribe { get; init; }
}
