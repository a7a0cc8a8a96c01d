using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Directions;

/// <summary>The points that stand for a subject in the frame: itself, and for the band the stretch to either side.</summary>
/// <remarks>Ten degrees of the band either way is an engineering choice: the bright bulge of the core spans about that.</remarks>
public static class SubjectStretch
{
    private const double CoreLongitudeDeg = 0;

    /// <summary>The subject's own point first; empty for <see cref="Subject.Stars"/>.</summary>
    public static IReadOnlyList<Subject> PointsOf(Subject subject) => subject switch
    {
        Subject.GalacticCore => [subject, .. Around(CoreLongitudeDeg)],
        Subject.GalacticBand band => [subject, .. Around(band.LongitudeDeg)],
        Subject.Stars => [],
        _ => [subject],
    };

    /// <summary>Tracks of those points from an instant on, second 0 of the tracks' clock.</summary>
    /// <param name="sky">The site's sky.</param>
    /// <param name="subject">What the camera is for.</param>
    /// <param name="from">Second 0.</param>
    public static IReadOnlyList<SiderealTrack> TracksOf(SiteSky sky, Subject subject, Instant from)
    {
        var points = PointsOf(subject);
        var tracks = new SiderealTrack[points.Count];
        for (var i = 0; i < tracks.Length; i++)
        {
            if (sky.SubjectAt(points[i], from) is Horizontal standing) tracks[i] = new SiderealTrack(standing, sky.Position.LatitudeDeg);
        }

        return tracks;
    }

    private static IEnumerable<Subject> Around(double longitudeDeg)
    {
        foreach (var offset in (double[])[-10, -5, 5, 10]) yield return new Subject.GalacticBand((longitudeDeg + offset + 360) % 360);
    }
}
