using NodaTime;

namespace NightWatch.Sky.Eclipses;

/// <summary>How deep the Moon goes into the Earth's shadow.</summary>
public enum LunarEclipseKind
{
    /// <summary>Through the penumbra only: hardly noticed.</summary>
    Penumbral,

    /// <summary>Partly in the umbra.</summary>
    Partial,

    /// <summary>Wholly in the umbra for a while.</summary>
    Total,
}

/// <summary>One eclipse of the Moon, the same for the whole Earth; who sees it depends on where the Moon is up.</summary>
/// <param name="Kind">The deepest stage it reaches.</param>
/// <param name="Greatest">When the Moon's centre is nearest to the axis of the shadow.</param>
/// <param name="Penumbral">From the first to the last contact with the penumbra (P1 to P4).</param>
/// <param name="Partial">From the first to the last contact with the umbra (U1 to U4); null for a penumbral eclipse.</param>
/// <param name="Total">While the whole Moon is in the umbra (U2 to U3); null unless total.</param>
/// <param name="PenumbralMagnitude">Share of the Moon's diameter inside the penumbra at greatest eclipse.</param>
/// <param name="UmbralMagnitude">Share of the Moon's diameter inside the umbra at greatest eclipse; negative when it misses the
/// umbra.</param>
/// <param name="Gamma">Least distance of the Moon's centre from the axis, equatorial radii of the Earth; positive to the north.</param>
public sealed record LunarEclipse(
    LunarEclipseKind Kind,
    Instant Greatest,
    Interval Penumbral,
    Interval? Partial,
    Interval? Total,
    double PenumbralMagnitude,
    double UmbralMagnitude,
    double Gamma);
