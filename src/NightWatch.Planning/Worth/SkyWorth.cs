using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Worth;

/// <summary>The dark share of a frame's worth, by what lights the sky at the subject: nature, towns, Moon, twilight, and the air before it.</summary>
internal static class SkyWorth
{
    /// <summary>Brightness of the sky at the subject, V mag/arcsec², as it hides the subject.</summary>
    /// <remarks>
    /// The air dims the subject more the lower it stands; a sky that is brighter by as much would hide it the same overhead. So the dimming
    /// (Kasten and Young's air mass, against the zenith) is taken off the magnitude. For stars it is the zenith's.
    /// </remarks>
    public static double HidingMag(in SkyStep step, double extinction) => WithoutAir(step.Light.TotalNl, step, extinction);

    /// <summary>The same without the Moon.</summary>
    public static double MoonlessHidingMag(in SkyStep step, double extinction) => WithoutAir(step.Light.TotalNl - step.Light.MoonNl, step, extinction);

    /// <summary>The dark share by cell.</summary>
    /// <param name="above">The sky.</param>
    /// <param name="extinction">V-band extinction, magnitudes per air mass.</param>
    /// <param name="limits">The watch's, for its own levels.</param>
    /// <param name="subject">For the usual levels.</param>
    public static double[] Dark(SkyTrack above, double extinction, Limits limits, Subject subject)
    {
        var levels = DarkLevels.Of(limits, subject);
        return Array.ConvertAll(above.Steps, step => Of(levels, HidingMag(step, extinction)));
    }

    /// <summary>The share at a brightness.</summary>
    public static double Of(DarkLevels levels, double hidingMag) => Share.Between(hidingMag, levels.FullMag, levels.NothingMag);

    private static double WithoutAir(double nanolamberts, in SkyStep step, double extinction) =>
        SurfaceBrightness.Magnitude(nanolamberts) - extinction * (Atmosphere.Airmass(step.Looked.AltitudeDeg) - 1);
}
