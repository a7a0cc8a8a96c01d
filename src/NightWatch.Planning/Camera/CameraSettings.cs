namespace NightWatch.Planning.Camera;

/// <summary>Exposure and ISO to set on the camera.</summary>
/// <param name="ExposureS">Exposure, seconds, one of a camera's own steps.</param>
/// <param name="Iso">ISO, one of a camera's own steps.</param>
/// <param name="SkyShare">Share of saturation the sky reaches with them.</param>
public readonly record struct CameraSettings(double ExposureS, int Iso, double SkyShare)
{
    // ISO 12232 and ISO 2720 give the third-stop series; cameras print these roundings.
    private static ReadOnlySpan<double> Seconds =>
        [
            30, 25, 20, 15, 13, 10, 8, 6, 5, 4, 3.2, 2.5, 2, 1.6, 1.3, 1, 0.8, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.125, 0.0625, 0.03125,
            0.015625, 0.001,
        ];

    private static ReadOnlySpan<int> Isos =>
        [100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800];

    /// <summary>Longest camera exposure not above a limit, seconds: 30 at most, 1/1000 at least.</summary>
    public static double ExposureAtMost(double limitS)
    {
        foreach (var seconds in Seconds)
        {
            if (seconds <= limitS) return seconds;
        }

        return Seconds[^1];
    }

    /// <summary>Highest ISO of usual cameras, for test frames only.</summary>
    public const int HighestIso = 12_800;

    /// <summary>Camera exposure nearest a value on the scale of stops, seconds: 1/1000 to 30.</summary>
    public static double ExposureNearest(double wantedS)
    {
        var best = Seconds[0];
        foreach (var seconds in Seconds)
        {
            if (Math.Abs(Math.Log(seconds / wantedS)) < Math.Abs(Math.Log(best / wantedS))) best = seconds;
        }

        return best;
    }

    /// <summary>Camera ISO nearest a value on the scale of stops, 100 to <paramref name="most"/>.</summary>
    /// <param name="iso">Wanted ISO.</param>
    /// <param name="most">Highest to use; up to 12800.</param>
    public static int NearestIso(double iso, int most = 6400)
    {
        var best = Isos[0];
        foreach (var candidate in Isos)
        {
            if (candidate <= most && Math.Abs(Math.Log(candidate / iso)) < Math.Abs(Math.Log(best / iso))) best = candidate;
        }

        return best;
    }

    /// <summary>The longest exposure that trails allow, and the ISO that puts the sky at the wanted share.</summary>
    /// <param name="trailLimitS">Longest exposure, seconds.</param>
    /// <param name="candelaPerM2">Luminance of the sky at the darkest of the run, cd/m².</param>
    /// <param name="fNumber">Aperture number.</param>
    /// <param name="skyShare">Wanted share of saturation, above 0 to 1.</param>
    /// <param name="mostIso">Highest ISO to use; 6400 by default, beyond which most sensors only multiply (common practice).</param>
    /// <remarks>Under a sky too bright for ISO 100 the exposure is shortened instead.</remarks>
    public static CameraSettings For(double trailLimitS, double candelaPerM2, double fNumber, double skyShare, int mostIso = 6400)
    {
        var exposure = ExposureAtMost(trailLimitS);
        var wanted = SkyExposure.IsoFor(skyShare, candelaPerM2, fNumber, exposure);
        if (wanted < Isos[0])
            exposure = ExposureAtMost(Math.Min(exposure, SkyExposure.SecondsFor(skyShare, candelaPerM2, fNumber, Isos[0])));
        var iso = NearestIso(wanted, mostIso);
        return new CameraSettings(exposure, iso, SkyExposure.Share(candelaPerM2, fNumber, exposure, iso));
    }
}
