namespace NightWatch.Watchkeeping.Passes;

/// <summary>How passes are shared between processes.</summary>
/// <param name="LeaseSeconds">Seconds after which another process takes over what a dead one was looking at; renewed while it
/// lives.</param>
internal sealed record PassOptions(int LeaseSeconds);
