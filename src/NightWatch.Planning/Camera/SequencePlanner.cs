using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>Frames of a run: exposure, interval, number, playback.</summary>
public static class SequencePlanner
{
    /// <summary>Plans the frames of one run.</summary>
    /// <param name="run">First frame opens at its start, the last closes before its end.</param>
    /// <param name="kit">The camera.</param>
    /// <param name="wish">What is wished; what is null is chosen.</param>
    /// <param name="fastestDeclinationDeg">Declination in the frame at which stars move fastest; 0 where the frame is not known.</param>
    /// <param name="darkestCandelaPerM2">Luminance of the sky at the darkest of the run: the ISO is set by it.</param>
    /// <returns>Null when not one frame fits.</returns>
    public static Sequence? Plan(Interval run, Kit kit, SequenceWish wish, double fastestDeclinationDeg, double darkestCandelaPerM2)
    {
        var trailLimit = TrailLimit.LongestS(wish.TrailPixels, kit.FocalLengthMm, kit.PixelPitchUm, fastestDeclinationDeg);
        var (exposure, iso) = Settings(kit, wish, trailLimit, darkestCandelaPerM2);
        var interval = IntervalS(exposure, kit, wish);
        var length = run.Duration.TotalSeconds;
        var shots = Shots(length, exposure, interval);
        if (shots == 0) return null;

        if (wish.PlaybackS is { } playback)
            (shots, interval) = ForPlayback(playback, wish, length, exposure, interval, shots);

        return new Sequence
        {
            Span = new Interval(run.Start, run.Start + Duration.FromSeconds((shots - 1) * interval + exposure)),
            ExposureS = exposure,
            IntervalS = interval,
            Shots = shots,
            PlaybackS = shots / wish.PlaybackFps,
            PlaybackFps = wish.PlaybackFps,
            CommonPracticeLimitS = TrailLimit.CommonPracticeS(kit.FocalLengthMm),
            TrailLimitS = trailLimit,
            NpfSimpleS = TrailLimit.NpfSimpleS(kit.FNumber, kit.PixelPitchUm, kit.FocalLengthMm),
            NpfFullS = TrailLimit.NpfFullS(kit.FNumber, kit.PixelPitchUm, kit.FocalLengthMm, fastestDeclinationDeg),
            FastestDeclinationDeg = fastestDeclinationDeg,
            TrailPixels = TrailLimit.TrailPixels(exposure, kit.FocalLengthMm, kit.PixelPitchUm, fastestDeclinationDeg),
            Iso = iso,
            TestIso = CameraSettings.HighestIso,
            TestExposureS = CameraSettings.ExposureNearest(exposure * iso / CameraSettings.HighestIso),
            WishedPlaybackS = wish.PlaybackS,
            StorageGb = CardSpace.NeedGb(shots, kit.RawFileMb),
        };
    }

    /// <summary>Frames that start and finish inside a length: ⌊(length − exposure) / interval⌋ + 1, or none.</summary>
    /// <remarks>The looser count ⌊length / interval⌋ + 1 lets the last frame run out of the window.</remarks>
    public static int Shots(double lengthS, double exposureS, double intervalS) =>
        lengthS < exposureS ? 0 : (int)Math.Floor((lengthS - exposureS) / intervalS + 1e-9) + 1;

    /// <summary>
    /// Start to start: exposure, writing, moving and settling, rounded up to the whole second that interval timers keep; or longer where
    /// wished.
    /// </summary>
    public static double IntervalS(double exposureS, Kit kit, SequenceWish wish)
    {
        var needed = Math.Ceiling(exposureS + CardSpace.WriteS(kit.RawFileMb, kit.WriteMbPerS) + wish.MoveAndSettleS - 1e-9);
        return Math.Max(needed, wish.IntervalS ?? 0);
    }

    /// <summary>
    /// Solves backwards from a wanted playback: as many frames as it takes, spread over the whole run by a longer interval in whole
    /// seconds, unless the interval was wished; then the sequence ends early. What does not fit stays short.
    /// </summary>
    private static (int Shots, double Interval) ForPlayback(
        double playbackS, SequenceWish wish, double lengthS, double exposureS, double intervalS, int fitting)
    {
        var wanted = Math.Max(1, (int)Math.Ceiling(playbackS * wish.PlaybackFps - 1e-9));
        if (wanted >= fitting) return (fitting, intervalS);
        if (wish.IntervalS is not null || wanted == 1) return (wanted, intervalS);
        return (wanted, Math.Max(intervalS, Math.Floor((lengthS - exposureS) / (wanted - 1) + 1e-9)));
    }

    private static (double ExposureS, int Iso) Settings(Kit kit, SequenceWish wish, double trailLimitS, double candelaPerM2)
    {
        if (wish.ExposureS is { } exposure)
            return (exposure, kit.Iso ?? CameraSettings.NearestIso(SkyExposure.IsoFor(wish.SkyShare, candelaPerM2, kit.FNumber, exposure)));
        var settings = CameraSettings.For(trailLimitS, candelaPerM2, kit.FNumber, wish.SkyShare);
        return kit.Iso is { } iso ? (CameraSettings.ExposureAtMost(trailLimitS), iso) : (settings.ExposureS, settings.Iso);
    }
}
