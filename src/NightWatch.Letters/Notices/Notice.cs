using MimeKit;
using NodaTime;

namespace NightWatch.Letters.Notices;

/// <summary>A finished letter that is about no single night: a confirmation, a sign-in, the week's digest, a test.</summary>
/// <param name="DedupeKey">Unique in the outbox.</param>
/// <param name="Kind">"Confirmation", "SignIn", "Digest", "Test".</param>
/// <param name="Message">Ready to send; the same bytes for every attempt.</param>
/// <param name="Html">The HTML part.</param>
/// <param name="Text">The plain text part.</param>
/// <param name="NotAfter">Later than this it is dropped.</param>
public sealed record Notice(string DedupeKey, string Kind, MimeMessage Message, string Html, string Text, Instant NotAfter)
{
    /// <summary>Its reader asked for it this minute, so it goes also to an address that refused letters before.</summary>
    public bool IsAskedFor => Kind is "Confirmation" or "SignIn";
}
