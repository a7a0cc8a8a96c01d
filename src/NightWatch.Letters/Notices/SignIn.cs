using NightWatch.Letters.Views;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Notices;

/// <summary>The way to one's own watches, without a password.</summary>
/// <param name="Address">To whom.</param>
/// <param name="Link">The page with the button that signs in; its token works once.</param>
/// <param name="Now">The clock reading.</param>
/// <param name="Until">When the token ends.</param>
public sealed record SignInDraft(string Address, Uri Link, Instant Now, Instant Until)
{
    /// <summary>How long the token is good for.</summary>
    public static Duration Valid { get; } = Duration.FromMinutes(15);

    /// <summary>In whose clock the end is told.</summary>
    public DateTimeZone Zone { get; init; } = DateTimeZone.Utc;

    internal string Key => $"sign-in|{Address}|{Now.ToUnixTimeMilliseconds()}";

    internal NoticeView View => new()
    {
        Subject = "Sign in to your watches",
        Headline = "Sign in to your watches",
        Says = ["You asked to sign in. Open the page and press the button there, on the device on which you want to be signed in."],
        Button = new LinkView("Open the page to sign in", Link),
        Then =
        [
            $"The page works once, for {Speech.Metric(Zone).Clock.Length(Until - Now)}, until {Speech.Metric(Zone).Clock.WithOffset(Until)}.",
            "If you did not ask, do nothing: without this letter nobody gets in. Do not pass it on.",
        ],
        Foot = [$"Written {Speech.Metric(Zone).Clock.WithOffset(Now)}, because somebody typed this address into the sign-in page of this installation."],
    };
}
