using NightWatch.Planning.Grid;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>Holds the site's glow against the subject's path.</summary>
internal static class SkyBrightnessPlanner
{
    /// <param name="above">The sky.</param>
    /// <param name="grid">Its clock.</param>
    /// <param name="glow">The site's moonless sky.</param>
    /// <param name="run">The run; null: none.</param>
    public static SkyBrightnessPlan Plan(SkyTrack above, NightGrid grid, SiteSkyGlow glow, Run? run)
    {
        var (darkest, brightest) = glow.ZenithRange;
        int? most = null, best = null, least = null;
        for (var cell = run?.First ?? 0; cell <= (run?.Last ?? -1); cell++)
        {
            if (most is not { } m || TownGlow(cell) > TownGlow(m)) most = cell;
            if (best is not { } b || Contrast(cell) > Contrast(b)) best = cell;
            if (least is not { } l || Contrast(cell) < Contrast(l)) least = cell;
        }

        return new SkyBrightnessPlan
        {
            IsMeasured = glow.IsMeasured,
            ZenithMag = glow.ZenithMag,
            DarkestMag = darkest,
            BrightestMag = brightest,
            ExtinctionMagPerAirmass = glow.Extinction,
            Domes = [.. glow.Domes.Select(dome => OnPath(dome, above, grid, run))],
            MostTownGlowMag = most is { } cellOfMost ? TownGlow(cellOfMost) : null,
            MostTownGlowAt = most is { } worst ? grid.At(worst) : null,
            BestContrast = best is { } cellOfBest ? Contrast(cellOfBest) : null,
            BestContrastAt = best is { } at ? grid.At(at) : null,
            LeastContrast = least is { } cellOfLeast ? Contrast(cellOfLeast) : null,
        };

        double TownGlow(int cell)
        {
            var looked = above.Steps[cell].Looked;
            return 2.5 * Math.Log10(1 + glow.Increase(looked.AltitudeDeg, looked.AzimuthDeg));
        }

        double Contrast(int cell) => above.Steps[cell].Contrast(glow.Extinction);
    }

    private static PathDome OnPath(GlowDome dome, SkyTrack above, NightGrid grid, Run? run)
    {
        double? least = null;
        var nearest = 0;
        for (var cell = run?.First ?? 0; cell <= (run?.Last ?? -1); cell++)
        {
            if (above.Steps[cell].Subject is not { } subject) continue;
            var apart = Math.Abs(subject.AzimuthDeg - dome.AzimuthDeg) % 360;
            apart = Math.Min(apart, 360 - apart);
            if (apart >= least) continue;
            (least, nearest) = (apart, cell);
        }

        return new PathDome(
            dome.Place.Name,
            dome.Place.Population,
            dome.DistanceKm,
            dome.AzimuthDeg,
            dome.BrighteningMag,
            least,
            least is null ? null : grid.At(nearest));
    }
}
