namespace NightWatch.Store.Suppression;

/// <summary>What a mail server answered last.</summary>
/// <param name="Code">Reply code; null when there was no reply.</param>
/// <param name="Enhanced">Enhanced status code (RFC 3463), "5.1.1"; null when there was none.</param>
/// <param name="Text">In words, addresses struck out.</param>
public sealed record ServerReply(int? Code, string? Enhanced, string Text);
