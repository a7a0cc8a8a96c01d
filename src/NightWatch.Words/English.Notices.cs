using NightWatch.Sky.Places;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Words;

// Letters about no single night.
public sealed partial class English
{
    /// <inheritdoc/>
    public NoticeWords Confirmation(GeoPosition? place, Instant until, Instant now, Speech speech)
    {
        var where = place is { } at ? $" at {At(at)}" : "";
        return new NoticeWords(
            "Confirm: letters about good nights to this address",
            "Shall NightWatch write to this address?",
            [
                $"Somebody, we hope you, asked for letters to this address: when a dark and clear night is coming{where}, when that " +
                "changes on the day, and the day's clock times.",
                "If that was you, open the page and press the button there.",
            ],
            "Open the page to confirm",
            [
                $"The page works once, until {speech.Clock.WithOffset(until)}.",
                "If it was not you, do nothing: no letters will come, and the address is forgotten.",
            ],
            $"Written {speech.Clock.WithOffset(now)}, because the address was typed into the sign-up page of this installation.");
    }

    /// <inheritdoc/>
    public NoticeWords SignIn(Instant until, Instant now, Speech speech) => new(
        "Sign in to your watches",
        "Sign in to your watches",
        ["You asked to sign in. Open the page and press the button there, on the device on which you want to be signed in."],
        "Open the page to sign in",
        [
            $"The page works once, for {speech.Clock.Length(until - now)}, until {speech.Clock.WithOffset(until)}.",
            "If you did not ask, do nothing: without this letter nobody gets in. Do not pass it on.",
        ],
        $"Written {speech.Clock.WithOffset(now)}, because somebody typed this address into the sign-in page of this installation.");

    /// <inheritdoc/>
    public NoticeWords Test(string from, Instant now) =>
        new(
            "NightWatch test letter: mail arrives",
            "NightWatch test letter",
            [
                "This is a test letter from NightWatch. That you read it means that letters from this installation reach you.",
                "It is about no night and asks nothing of you. Should it lie in the junk folder, mark its sender as wanted, or the word " +
                "that a night is off will lie there too.",
            ],
            "",
            [],
            $"Written {InstantPattern.General.Format(now)}, from {from}.");

    private string At(GeoPosition at) => string.Create(
        Culture,
        $"{Math.Abs(at.LatitudeDeg):0.00}° {North(at)}, {Math.Abs(at.LongitudeDeg):0.00}° {East(at)}");

    private static string North(GeoPosition at) => at.LatitudeDeg < 0 ? "S" : "N";

    private static string East(GeoPosition at) => at.LongitudeDeg < 0 ? "W" : "E";
}
