namespace NightWatch.Words;

/// <summary>A sentence of which a page makes one part stand out, or lead somewhere.</summary>
/// <param name="Before">What stands before that part, with the space between them.</param>
/// <param name="Marked">The part.</param>
/// <param name="After">What stands behind it.</param>
public readonly record struct MarkedSentence(string Before, string Marked, string After);
