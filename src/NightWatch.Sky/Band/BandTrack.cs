using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Sky.Band;

/// <summary>How the galactic band moves over a place while a night goes on.</summary>
public sealed class BandTrack
{
    private BandTrack(IReadOnlyList<BandArch> arches) => Arches = arches;

    /// <summary>The arch at the start, at every step, and at the end.</summary>
    public IReadOnlyList<BandArch> Arches { get; }

    /// <summary>When it lies lowest: the moment for a panorama of the whole arch.</summary>
    public BandArch Lowest => Arches.MinBy(arch => arch.TopAltitudeDeg)!;

    /// <summary>When it stands steepest: the moment for upright frames.</summary>
    public BandArch Steepest => Arches.MaxBy(arch => arch.TopAltitudeDeg)!;

    /// <summary>Follows the band.</summary>
    /// <param name="position">The place.</param>
    /// <param name="span">From when to when, such as a dark window; bounded on both sides.</param>
    /// <param name="step">Between two arches, at least a second.</param>
    /// <exception cref="ArgumentOutOfRangeException">The step is shorter than a second.</exception>
    public static BandTrack Over(GeoPosition position, Interval span, Duration step)
    {
        if (step < Duration.FromSeconds(1)) throw new ArgumentOutOfRangeException(nameof(step), step, "Accepted: a second or more.");
        var arches = new List<BandArch>();
        for (var at = span.Start; at < span.End; at += step) arches.Add(BandArch.Over(position, at));
        arches.Add(BandArch.Over(position, span.End));
        return new(arches);
    }
}
