using System.Globalization;
using NightWatch.Letters.Views;
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

    // Figures only: a name or a site typed by a stranger would make this letter carry the stranger's words.
    internal NoticeView View => new()
    {
        Subject = "Confirm: letters about good nights to this address",
        Headline = "Shall NightWatch write to this address?",
        Says =
        [
            "Somebody, we hope you, asked for letters to this address: when a dark and clear night is coming"
            + (Place is { } at ? string.Create(CultureInfo.InvariantCulture, $" at {Math.Abs(at.LatitudeDeg):0.00}° {(at.LatitudeDeg < 0 ? "S" : "N")}, {Math.Abs(at.LongitudeDeg):0.00}° {(at.LongitudeDeg < 0 ? "W" : "E")}") : "")
            + ", when that changes on the day, and the day's clock times.",
            "If that was you, open the page and press the button there.",
        ],
        Button = new LinkView("Open the page to confirm", Confirm),
        Then =
        [
            $"The page works once, until {Speech.Metric(Zone).Clock.WithOffset(Until)}.",
            "If it was not you, do nothing: no letters will come, and the address is forgotten.",
        ],
        Foot = [$"Written {Speech.Metric(Zone).Clock.WithOffset(Now)}, because the address was typed into the sign-up page of this installation."],
    };
}
