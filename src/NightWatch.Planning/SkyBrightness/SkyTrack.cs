using NightWatch.Planning.Directions;
using NightWatch.Planning.Grid;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>Where Sun, Moon and subject stand at each step of a night, and how bright the sky is there.</summary>
/// <param name="steps">One entry a step, in order.</param>
/// <param name="points">The subject's points carried on from the start of the grid; empty for stars.</param>
internal sealed class SkyTrack(SkyStep[] steps, IReadOnlyList<SiderealTrack> points)
{
    public SkyStep[] Steps { get; } = steps;

    public IReadOnlyList<SiderealTrack> Points { get; } = points;

    /// <summary>The Moon's brightening alone, magnitudes, by step.</summary>
    public double[] MoonBrighteningMag { get; } = Array.ConvertAll(steps, step => step.Light.MoonBrighteningMag);

    /// <summary>Follows the sky over the grid.</summary>
    public static SkyTrack Of(SiteSky sky, Subject subject, SiteSkyGlow glow, NightGrid grid)
    {
        var steps = new SkyStep[grid.Count];
        for (var cell = 0; cell < steps.Length; cell++)
        {
            var at = grid.At(cell);
            var sun = sky.SunAt(at).AltitudeDeg;
            var moon = sky.MoonAt(at);
            var there = sky.SubjectAt(subject, at);
            steps[cell] = new SkyStep(sun, moon, there, SkyLight.At(glow, there ?? SkyStep.Zenith, moon, sun));
        }

        return new SkyTrack(steps, SubjectStretch.TracksOf(sky, subject, grid.Start));
    }

    /// <summary>Luminance of the darkest sky at the subject in a run, cd/m².</summary>
    public double DarkestCandelaPerM2(int first, int last)
    {
        var darkest = double.PositiveInfinity;
        for (var cell = first; cell <= last; cell++) darkest = Math.Min(darkest, Steps[cell].Light.CandelaPerM2);
        return darkest;
    }
}

/// <summary>The sky at one step.</summary>
/// <param name="SunAltitudeDeg">Centre, topocentric, airless.</param>
/// <param name="Moon">The Moon.</param>
/// <param name="Subject">The subject; null for stars.</param>
/// <param name="Light">Of the clear sky at the subject, at the zenith for stars.</param>
internal readonly record struct SkyStep(double SunAltitudeDeg, MoonSighting Moon, Horizontal? Subject, SkyLight Light)
{
    /// <summary>Where "stars" look.</summary>
    public static Horizontal Zenith { get; } = new(90, 0);

    /// <summary>Where the light is judged.</summary>
    public Horizontal Looked => Subject ?? Zenith;

    /// <summary>How well a faint subject stands out, as a share of overhead under a natural sky.</summary>
    public double Contrast(double extinction) => Light.ContrastShare(Looked.AltitudeDeg, extinction);
}
