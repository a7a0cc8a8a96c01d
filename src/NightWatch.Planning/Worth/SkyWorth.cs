using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Worth;

/// <summary>
/// The dark share of a frame's worth, by what lights the sky at the subject: nature, towns, Moon, twilight, and the air before it.
/// </summary>
internal static class SkyWorth
{
    /// <summary>Brightness of the sky at the subject (at the zenith for stars) without the Moon, V mag/arcsec².</summary>
    public static double MoonlessMag(in SkyStep step) => SurfaceBrightness.Magnitude(step.Light.TotalNl - step.Light.MoonNl);

    /// <summary>The dark share by cell.</summary>
    /// <param name="above">The sky.</param>
    /// <param name="limits">The watch's, for its own levels.</param>
    /// <param name="subject">For the usual levels.</param>
    public static double[] Dark(SkyTrack above, Limits limits, Subject subject)
    {
        var levels = DarkLevels.Of(limits, subject);
        return Array.ConvertAll(above.Steps, step => Of(levels, step.Light.Mag));
    }

    /// <summary>The share at a brightness of the sky at the subject, V mag/arcsec².</summary>
    public static double Of(DarkLevels levels, double mag) =>
        levels.FullMag == levels.NothingMag ? (mag >= levels.FullMag ? 1 : 0) : Share.Between(mag, levels.FullMag, levels.NothingMag);
}
