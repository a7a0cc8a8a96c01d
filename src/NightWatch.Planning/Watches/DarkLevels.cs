using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Watches;

/// <summary>Between which brightnesses of the sky at the subject a frame goes from worthless to full worth, V mag/arcsec².</summary>
/// <param name="FullMag">As dark as this or darker a frame counts in full.</param>
/// <param name="NothingMag">Brighter than this it counts for nothing.</param>
public readonly record struct DarkLevels(double FullMag, double NothingMag)
{
    /// <summary>The levels of a watch: its own, else the usual ones of its subject.</summary>
    public static DarkLevels Of(Limits limits, Subject subject)
    {
        var usual = For(subject);
        return new(limits.DarkFullMag ?? usual.FullMag, limits.DarkNothingMag ?? usual.NothingMag);
    }

    /// <summary>The levels of a watch that names none: a faint glow needs a darker sky than stars do. Common practice, no source.</summary>
    private static DarkLevels For(Subject subject) => subject is Subject.Stars ? new(19.0, 17.0) : new(20.8, 19.5);
}
