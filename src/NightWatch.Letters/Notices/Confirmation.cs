using NightWatch.Sky.Places;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Notices;

/// <summary>The question whether an address wants the letters of a new watch. Whoever typed the address may be a stranger to it.</summary>
/// <param name="Address">To whom; no name, since a stranger may have chosen it.</param>
/// <param name="Confirm">The page with the button that confirms; its token works once.</param>
/// <param name="Now">The clock reading.</param>
/// <param name="Until">When the token ends.</param>
public sealed record ConfirmationDraft(string Address, Uri Confirm, Instant Now, Instant Until)
{
    /// <summary>How long the token is good for.</summary>
    public static Duration Valid { get; } = Duration.FromHours(48);

    /// <summary>Where the watch looks, so that the reader knows what it is about; null: not said.</summary>
    public GeoPosition? Place { get; init; }

    /// <summary>In whose clock the end is told.</summary>
    public DateTimeZone Zone { get; init; } = DateTimeZone.Utc;

    internal string Key => $"confirmation|{Address}|{Now.ToUnixTimeMilliseconds()}";

    internal NoticeView View
    {
        get
        {
            var speech = Speech.Metric(Zone);
            return NoticeView.Of(speech.Language.Confirmation(Place, Until, Now, speech), speech.Language, Confirm);
        }
    }
}
