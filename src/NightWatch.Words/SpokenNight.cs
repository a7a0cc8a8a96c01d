using NodaTime;

namespace NightWatch.Words;

/// <summary>A night as its reader counts it.</summary>
/// <param name="Evening">Local date of its evening.</param>
/// <param name="Ahead">Nights from the reader's own date to it; 0 today, negative once its evening is past.</param>
public readonly record struct SpokenNight(LocalDate Evening, int Ahead)
{
    /// <summary>So near that nobody would count nights.</summary>
    public bool IsNear => Ahead is 0 or 1;
}

/// <summary>How a sentence names its night.</summary>
public enum NightNaming
{
    /// <summary>By the nights until it.</summary>
    Counted,

    /// <summary>By its dates, unless it is near.</summary>
    Dated,

    /// <summary>As the one that is under way.</summary>
    UnderWay,
}

/// <summary>A choice instead of a night, or in its place.</summary>
/// <param name="Evening">Local date of its evening.</param>
/// <param name="Site">Where; null: at the same place.</param>
/// <param name="DriveKm">One way, km; null: nobody need drive farther.</param>
public sealed record SpokenChoice(LocalDate Evening, string? Site, double? DriveKm);
