using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>Frames of a run: exposure, interval, number, playback.</summary>
public static class SequencePlanner
{
    /// <summary>Exposures a camera offers without a remote timer, seconds (third stops as engraved).</summary>
    private static readonly double[] ShutterS =
        [0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30];

    /// <summary>Plans the frames of one run.</summary>
    /// <param name="run">First frame opens at its start, the last closes before its end.</param>
    /// <param name="kit">The camera.</param>
    /// <param name="wish">What is wished; what is null is chosen.</param>
    /// <param name="declinationDeg">Of the frame's centre; 0, where stars move fastest, when there is no subject.</param>
    /// <param name="iso">The setting.</param>
    /// <returns>Null when not one frame fits.</returns>
    public static Sequence? Plan(Interval run, Kit kit, SequenceWish wish, double declinationDeg, int iso)
    {
        var declination = SequenceTrails.FastestDeclinationDeg(kit, declinationDeg);
        var trailLimit = SequenceTrails.LimitS(kit, wish.TrailPixels, declination);
        var exposure = wish.ExposureS ?? ShutterBelow(trailLimit);
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
            CommonPracticeLimitS = SequenceTrails.CommonPracticeS(kit),
            TrailLimitS = trailLimit,
            TrailPixels = SequenceTrails.Pixels(kit, exposure, declination),
            Iso = iso,
            StorageGb = shots * kit.RawFileMb / 1000,
        };
    }

    /// <summary>Frames that start and finish inside a length: ⌊(length − exposure) / interval⌋ + 1, or none.</summary>
    /// <remarks>The looser count ⌊length / interval⌋ + 1 lets the last frame run out of the window.</remarks>
    public static int Shots(double lengthS, double exposureS, double intervalS) =>
        lengthS < exposureS ? 0 : (int)Math.Floor((lengthS - exposureS) / intervalS + 1e-9) + 1;

    /// <summary>Start to start: exposure, writing, moving and settling, rounded up to the whole second that interval timers keep; or longer where wished.</summary>
    public static double IntervalS(double exposureS, Kit kit, SequenceWish wish)
    {
        var needed = Math.Ceiling(exposureS + kit.RawFileMb / kit.WriteMbPerS + wish.MoveAndSettleS - 1e-9);
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

    private static double ShutterBelow(double limitS)
    {
        var best = ShutterS[0];
        foreach (var shutter in ShutterS)
        {
            if (shutter <= limitS) best = shutter;
        }

        return best;
    }
}
