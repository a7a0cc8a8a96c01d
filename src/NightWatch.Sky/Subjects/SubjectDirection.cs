using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Subjects;

/// <summary>Where subjects stand among the stars.</summary>
public static class SubjectDirection
{
    private static readonly Vector3D GalacticCore =
        Vector3D.FromDegrees((17 + 45 / 60.0 + 40.036 / 3600) * 15, -(29 + 0 / 60.0 + 28.17 / 3600));

    /// <summary>The ICRS direction of a subject, as a unit vector; null for <see cref="Subject.Stars"/>.</summary>
    public static Vector3D? Icrs(Subject subject) => subject switch
    {
        Subject.GalacticCore => GalacticCore,
        Subject.GalacticBand band => Galactic.ToIcrs(band.LongitudeDeg, 0),
        Subject.FixedPoint point => Vector3D.FromDegrees(point.RightAscensionDeg, point.DeclinationDeg),
        Subject.Stars => null,
        _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "Accepted: the cases of Subject."),
    };
}
