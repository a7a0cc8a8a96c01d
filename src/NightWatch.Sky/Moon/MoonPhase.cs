using NodaTime;

namespace NightWatch.Sky.Moon;

/// <summary>The four phases that have an instant.</summary>
public enum PhaseName
{
    /// <summary>Same apparent longitude as the Sun.</summary>
    New,

    /// <summary>90° east of the Sun; waxing.</summary>
    FirstQuarter,

    /// <summary>Opposite the Sun in longitude.</summary>
    Full,

    /// <summary>90° west of the Sun; waning.</summary>
    LastQuarter,
}

/// <summary>One phase of one lunation.</summary>
/// <param name="Name">Which phase it is.</param>
/// <param name="At">When, within a second between 1972 and 2050.</param>
public readonly record struct MoonPhase(PhaseName Name, Instant At);
