namespace NightWatch.Sky.Subjects;

/// <summary>What the camera is for. Closed: these cases are all there are.</summary>
public abstract record Subject
{
    private Subject()
    {
    }

    /// <summary>The galactic core: ICRS 17h45m40.036s, −29°00′28.17″.</summary>
    public sealed record GalacticCore : Subject;

    /// <summary>The point of the galactic equator at a galactic longitude (IAU 1958 system); the band rises with it.</summary>
    /// <param name="LongitudeDeg">Galactic longitude, degrees, 0 to below 360.</param>
    public sealed record GalacticBand(double LongitudeDeg) : Subject;

    /// <summary>A fixed direction.</summary>
    /// <param name="Name">What the photographer calls it.</param>
    /// <param name="RightAscensionDeg">ICRS, degrees, 0 to below 360.</param>
    /// <param name="DeclinationDeg">ICRS, degrees, −90 to 90.</param>
    public sealed record FixedPoint(string Name, double RightAscensionDeg, double DeclinationDeg) : Subject;

    /// <summary>No subject: a dark sky is enough, the subject window is the whole span.</summary>
    public sealed record Stars : Subject;
}
