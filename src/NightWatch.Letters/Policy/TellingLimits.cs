using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>The policy's fixed figures, with the why. Ours, no source: they weigh a needless letter against a needless drive.</summary>
internal static class TellingLimits
{
    /// <summary>
    /// This long before leave-by one forecast run is enough to change what was told: hourly feeds bring a second run in time for the
    /// earlier hours, and from here on waiting costs more than a wrong letter.
    /// </summary>
    public static readonly Duration LastHours = Duration.FromHours(4);

    /// <summary>
    /// Good news is told only while fewer letters than this went out about the night; bad news always. The bound for a flapping
    /// forecast is therefore one letter more.
    /// </summary>
    public const int MostLettersForGoodNews = 5;

    /// <summary>A debrief is asked for until this long after the night; later nobody remembers.</summary>
    public static readonly Duration DebriefUse = Duration.FromHours(36);
}
