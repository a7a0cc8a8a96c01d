using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Notices;

/// <summary>The way to one's own watches, without a password.</summary>
/// <param name="Address">The recipient's address.</param>
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

    internal NoticeView View
    {
        get
        {
            var speech = Speech.Metric(Zone);
            return NoticeView.Of(speech.Language.SignIn(Until, Now, speech), speech.Language, Link);
        }
    }
}
