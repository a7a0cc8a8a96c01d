using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Camera;

/// <summary>How long stars stay points.</summary>
public static class TrailLimit
{
    /// <summary>Turn of the sky, arcseconds a second: 7.292115 × 10⁻⁵ rad/s (IERS Conventions 2010, table 1.2).</summary>
    public const double SiderealArcsecPerS = SiderealTrack.RadiansPerSecond * 180 / Math.PI * 3600;

    /// <summary>Common practice, no published source: a number over the focal length, seconds.</summary>
    /// <param name="focalLengthMm">Focal length, mm.</param>
    /// <param name="number">600 by default; 500 and 400 are in use too.</param>
    public static double CommonPracticeS(double focalLengthMm, double number = 600) => number / focalLengthMm;

    /// <summary>The short NPF form, seconds: (35 A + 30 p) / f. F. Michaud, Société astronomique du Havre, 2016.</summary>
    /// <param name="fNumber">Aperture number.</param>
    /// <param name="pixelPitchUm">Pixel pitch, micrometres.</param>
    /// <param name="focalLengthMm">Focal length, mm.</param>
    public static double NpfSimpleS(double fNumber, double pixelPitchUm, double focalLengthMm) =>
        (35 * fNumber + 30 * pixelPitchUm) / focalLengthMm;

    /// <summary>The full NPF form, seconds: k (16.856 A + 0.0997 f + 13.713 p) / (f cos δ). F. Michaud, 2016.</summary>
    /// <param name="fNumber">Aperture number.</param>
    /// <param name="pixelPitchUm">Pixel pitch, micrometres.</param>
    /// <param name="focalLengthMm">Focal length, mm.</param>
    /// <param name="declinationDeg">Of the fastest star in the frame, degrees; below ±90.</param>
    /// <param name="looseness">k: 1 for points to 3 for slight trails.</param>
    public static double NpfFullS(double fNumber, double pixelPitchUm, double focalLengthMm, double declinationDeg, double looseness = 1) =>
        looseness * (16.856 * fNumber + 0.0997 * focalLengthMm + 13.713 * pixelPitchUm)
        / (focalLengthMm * Math.Cos(declinationDeg * Math.PI / 180));

    /// <summary>Trail, pixels, at the scale of the frame's centre.</summary>
    /// <param name="exposureS">Exposure, seconds.</param>
    /// <param name="focalLengthMm">Focal length, mm.</param>
    /// <param name="pixelPitchUm">Pixel pitch, micrometres.</param>
    /// <param name="declinationDeg">Of the star, degrees.</param>
    public static double TrailPixels(double exposureS, double focalLengthMm, double pixelPitchUm, double declinationDeg) =>
        exposureS * SiderealTrack.RadiansPerSecond * Math.Cos(declinationDeg * Math.PI / 180) * focalLengthMm * 1000 / pixelPitchUm;

    /// <summary>Longest exposure, seconds, for a trail at the scale of the frame's centre; without bound at the pole.</summary>
    /// <param name="trailPixels">Longest accepted trail, pixels.</param>
    /// <param name="focalLengthMm">Focal length, mm.</param>
    /// <param name="pixelPitchUm">Pixel pitch, micrometres.</param>
    /// <param name="declinationDeg">Of the fastest star in the frame, degrees: <see cref="DeclinationSpan.FastestDeg"/>.</param>
    public static double LongestS(double trailPixels, double focalLengthMm, double pixelPitchUm, double declinationDeg) =>
        trailPixels / TrailPixels(1, focalLengthMm, pixelPitchUm, declinationDeg);

    /// <summary>Trail of one second, pixels, at the worst corner or edge: a straight-line lens stretches towards its corners.</summary>
    /// <param name="frame">Sensor and lens.</param>
    /// <param name="heading">Where the camera looks.</param>
    /// <param name="latitudeDeg">Of the site, degrees north.</param>
    /// <param name="pixelPitchUm">Pixel pitch, micrometres.</param>
    /// <remarks>The projection differentiated at 33 points of the frame's edge and centre.</remarks>
    public static double WorstCornerPixelsPerS(Frame frame, Heading heading, double latitudeDeg, double pixelPitchUm)
    {
        const int perSide = 8;
        var pose = new CameraPose(heading, frame.FocalLengthMm);
        var pole = Direction.Pole(latitudeDeg);
        var (x, y) = (frame.WidthMm / 2, frame.HeightMm / 2);
        var worst = pose.SpeedMmPerRadian(default, pole);
        for (var i = 0; i < perSide; i++)
        {
            var along = 2.0 * i / perSide - 1;
            worst = Math.Max(worst, pose.SpeedMmPerRadian(new FramePoint(along * x, -y), pole));
            worst = Math.Max(worst, pose.SpeedMmPerRadian(new FramePoint(x, along * y), pole));
            worst = Math.Max(worst, pose.SpeedMmPerRadian(new FramePoint(-along * x, y), pole));
            worst = Math.Max(worst, pose.SpeedMmPerRadian(new FramePoint(-x, -along * y), pole));
        }

        return worst * SiderealTrack.RadiansPerSecond * 1000 / pixelPitchUm;
    }
}
