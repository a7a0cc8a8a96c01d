using MimeKit;

namespace NightWatch.Service.Commands.Letters;

/// <summary>A letter to be looked at.</summary>
internal sealed record ReviewLetter(MimeMessage Message, string Html, string Text);
