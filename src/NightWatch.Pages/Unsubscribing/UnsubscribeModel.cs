namespace NightWatch.Pages.Unsubscribing;

/// <summary>The page that stops letters.</summary>
/// <param name="WatchId">Of the link.</param>
/// <param name="Key">Of the link.</param>
/// <param name="Name">The place; null: the link's watch is no more.</param>
/// <param name="IsDigest">It is about the weekly letter alone.</param>
public sealed record UnsubscribeModel(string WatchId, string Key, string? Name, bool IsDigest);
