using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Conditions;

/// <summary>Where Sun, Moon and subject stand at each step of a night.</summary>
internal sealed class SkyTrack(SkyStep[] steps)
{
    /// <summary>One entry a step, in order.</summary>
    public SkyStep[] Steps { get; } = steps;

    /// <summary>The Moon's brightening alone, by step.</summary>
    public double[] MoonBrighteningMag { get; } = Array.ConvertAll(steps, step => step.MoonBrighteningMag);

    /// <summary>Where "stars" look.</summary>
    private static Horizontal Zenith { get; } = new(90, 0);

    /// <summary>Follows the sky over the grid.</summary>
    public static SkyTrack Of(SiteSky sky, Subject subject, NightGrid grid)
    {
        var steps = new SkyStep[grid.Count];
        for (var cell = 0; cell < steps.Length; cell++)
        {
            var at = grid.At(cell);
            var moon = sky.MoonAt(at);
            var there = sky.SubjectAt(subject, at);
            steps[cell] = new SkyStep(sky.SunAt(at).AltitudeDeg, moon, there, MoonBrightening.Magnitudes(moon, there ?? Zenith));
        }

        return new SkyTrack(steps);
    }
}

/// <summary>The sky at one step.</summary>
/// <param name="SunAltitudeDeg">Centre, topocentric, airless.</param>
/// <param name="Moon">The Moon.</param>
/// <param name="Subject">The subject; null for stars.</param>
/// <param name="MoonBrighteningMag">How much brighter the Moon makes the sky at the subject (at the zenith for stars), magnitudes.</param>
internal readonly record struct SkyStep(double SunAltitudeDeg, MoonSighting Moon, Horizontal? Subject, double MoonBrighteningMag);
