using NodaTime;

namespace NightWatch.Sky.Season;

/// <summary>The nights between two full Moons, around a new Moon.</summary>
/// <param name="NewMoon">When the Moon is new.</param>
/// <param name="Nights">Those of the calendar that belong to it, in order; the first and last lunation may be cut.</param>
/// <param name="Best">The best run of nights; null when no night is usable, or has half an hour.</param>
public sealed record DarkLunation(Instant NewMoon, IReadOnlyList<DarkNight> Nights, NightSpell? Best);

/// <summary>Nights in a row, each nearly as good as the best of its lunation.</summary>
/// <param name="First">Local date of the first evening.</param>
/// <param name="Last">Local date of the last evening.</param>
/// <param name="Count">How many nights.</param>
/// <param name="Usable">Their usable time together.</param>
public sealed record NightSpell(LocalDate First, LocalDate Last, int Count, Duration Usable)
{
    /// <summary>The share of the best night's longest window that every night of a run must reach. An engineering choice.</summary>
    public const double LeastShare = 0.8;

    /// <summary>The shortest window that a night of a run may have: less is not worth setting up for. An engineering choice.</summary>
    public static readonly Duration LeastWindow = Duration.FromMinutes(30);

    // Strictly consecutive dates; the run with the most usable time, the earlier of two equal ones.
    internal static NightSpell? BestOf(IReadOnlyList<DarkNight> nights)
    {
        if (nights.Count == 0) return null;
        var least = Duration.Max(nights.Max(night => night.IsUsable ? night.LongestRun : Duration.Zero) * LeastShare, LeastWindow);
        NightSpell? best = null, current = null;
        foreach (var night in nights)
        {
            current = !night.IsUsable || night.LongestRun < least ? null
                : current is null ? new(night.Night, night.Night, 1, night.Usable)
                : current with { Last = night.Night, Count = current.Count + 1, Usable = current.Usable + night.Usable };
            if (current is not null && current.Usable > (best?.Usable ?? Duration.Zero)) best = current;
        }

        return best;
    }
}
