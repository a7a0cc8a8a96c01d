using NodaTime;

namespace NightWatch.Delivery.Outbox;

/// <summary>When a letter is tried again. Long enough for a greylist (300 s), short enough for tonight.</summary>
internal static class RetrySchedule
{
    /// <summary>After so many charged attempts a letter is dead.</summary>
    public const int MostAttempts = 30;

    /// <summary>After so many resends of which nobody could know whether they were needed, a letter is dead.</summary>
    public const int MostAmbiguousResends = 2;

    private static readonly Duration LastChanceBefore = Duration.FromMinutes(1);
    private static readonly int[] FirstMinutes = [1, 6, 15, 30];

    /// <summary>The next try after a refusal "for now".</summary>
    /// <param name="letterId">Spreads the later tries of many letters by ±20 %, always the same for one letter.</param>
    /// <param name="attempt">The attempt that failed, from 1.</param>
    /// <param name="now">When it failed.</param>
    /// <param name="notAfter">The letter's end; a try that would come after it is made just before it instead.</param>
    /// <param name="greylisted">The server wants to see us again, but not at once (450): no earlier than six minutes.</param>
    public static Instant Next(long letterId, int attempt, Instant now, Instant notAfter, bool greylisted = false)
    {
        var step = Math.Max(attempt, greylisted ? 2 : 1) - 1;
        var wait =
            step < FirstMinutes.Length
                ? Duration.FromMinutes(FirstMinutes[step])
                : Duration.FromMinutes(30 * (1 + 0.2 * Spread(letterId, attempt)));
        return BeforeTheEnd(now + wait, now, notAfter);
    }

    /// <summary>
    /// The next try after a break that left it unknown whether the server has the letter: ten minutes, time for a bounce of the first.
    /// </summary>
    public static Instant AfterAmbiguous(Instant now, Instant notAfter) => BeforeTheEnd(now + Duration.FromMinutes(10), now, notAfter);

    private static Instant BeforeTheEnd(Instant next, Instant now, Instant notAfter)
    {
        var lastChance = notAfter - LastChanceBefore;
        return next > notAfter && lastChance > now ? lastChance : next;
    }

    /// <returns>−1 to 1.</returns>
    private static double Spread(long letterId, int attempt)
    {
        // SplitMix64's finalizer: any two neighbours come out far apart.
        var x = unchecked((ulong)letterId * 0x9E3779B97F4A7C15 + (ulong)attempt);
        x = unchecked((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9);
        x = unchecked((x ^ (x >> 27)) * 0x94D049BB133111EB);
        x ^= x >> 31;
        return x / (double)ulong.MaxValue * 2 - 1;
    }
}
