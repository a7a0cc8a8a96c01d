using NightWatch.Planning.Watches;
using NightWatch.Words;

namespace NightWatch.Pages.Watches;

/// <summary>Whether a watch looks, in words that follow its name.</summary>
internal static class WatchState
{
    /// <summary>"is paused", "rests until Fri 4 Jun": of a watch that is or will be.</summary>
    public static string RestOf(Watch watch) => watch.Paused ? "is paused" : $"rests until {LocalText.Date(watch.PausedUntil!.Value)}";
}
