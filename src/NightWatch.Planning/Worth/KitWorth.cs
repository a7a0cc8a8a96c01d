using NightWatch.Planning.Camera;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Power;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Worth;

/// <summary>The shares of a frame's worth that the kit has, by cell: 1 where nothing fails, and outside the sequence.</summary>
/// <param name="Framed">The subject stands in the frame.</param>
/// <param name="LensClear">No dew or frost, with the heater that is really powered then.</param>
/// <param name="Powered">A pack is left for the camera.</param>
/// <param name="Stored">A card has room.</param>
/// <param name="Exposed">The sky does not wash the frame out.</param>
internal sealed record KitWorth(double[] Framed, double[] LensClear, double[] Powered, double[] Stored, double[] Exposed)
{
    /// <summary>Nothing fails.</summary>
    public static KitWorth Whole(int cells)
    {
        var whole = All(cells);
        return new KitWorth(whole, whole, whole, whole, whole);
    }

    /// <summary>Works out the shares.</summary>
    /// <param name="grid">The cells.</param>
    /// <param name="sequence">The frames.</param>
    /// <param name="framed">The subject in the frame by cell; null: there is no frame to hold it.</param>
    /// <param name="lens">Dew, with the heater.</param>
    /// <param name="power">The packs; null: unknown, which takes nothing.</param>
    /// <param name="storage">The cards.</param>
    /// <param name="exposed">By <see cref="ExposedBy"/>.</param>
    public static KitWorth Of(
        NightGrid grid,
        Sequence sequence,
        double[]? framed,
        LensPlan lens,
        PowerPlan? power,
        StoragePlan? storage,
        double[] exposed) =>
        new(
            framed ?? All(grid.Count),
            Until(grid, sequence, DewFrom(lens)),
            Until(grid, sequence, power?.Empty),
            Until(grid, sequence, storage?.Full),
            exposed);

    /// <summary>1 in the frames whose sky stays below the watch's share of saturation.</summary>
    public static double[] ExposedBy(SkyTrack above, NightGrid grid, Kit kit, Sequence sequence, double mostShare)
    {
        var exposed = All(grid.Count);
        var (first, last) = grid.Cells(sequence.Span);
        for (var cell = first; cell <= last; cell++)
        {
            if (SkyExposure.Share(above.Steps[cell].Light.CandelaPerM2, kit.FNumber, sequence.ExposureS, sequence.Iso) >= mostShare)
                exposed[cell] = 0;
        }

        return exposed;
    }

    /// <summary>When the lens is lost to dew or frost; null: it stays clear, or it is not known.</summary>
    private static Instant? DewFrom(LensPlan lens)
    {
        if (lens.KitHeaterW <= 0) return lens.Onset;
        // A heater without power is none: what would have settled settles.
        Instant? unpowered = lens is { HeaterEmpty: { } empty, Onset: { } onset } ? Instant.Max(empty, onset) : null;
        return lens.HeatedOnset is { } late && (unpowered is null || late < unpowered) ? late : unpowered;
    }

    // 1 up to an instant, 0 from it to the last frame; the cell it falls in counts by the part before it.
    private static double[] Until(NightGrid grid, Sequence sequence, Instant? end)
    {
        var share = All(grid.Count);
        if (end is not { } at || at >= sequence.Span.End) return share;
        var (first, last) = grid.Cells(sequence.Span);
        for (var cell = first; cell <= last; cell++)
            share[cell] = Math.Clamp((at - grid.At(cell)) / NightGrid.Step, 0, 1);
        return share;
    }

    private static double[] All(int cells)
    {
        var ones = new double[cells];
        Array.Fill(ones, 1);
        return ones;
    }
}
