using NightWatch.Sky.Subjects;

namespace NightWatch.Words;

/// <summary>What a subject is called.</summary>
public static class SubjectTitle
{
    /// <summary>A subject for a title.</summary>
    public static string Of(Subject subject) => subject switch
    {
        Subject.GalacticCore => "galactic core",
        Subject.GalacticBand band => FormattableString.Invariant($"galactic band at longitude {band.LongitudeDeg:0.#}°"),
        Subject.FixedPoint { Name.Length: > 0 } point => point.Name,
        Subject.FixedPoint point => FormattableString.Invariant($"RA {point.RightAscensionDeg:0.##}°, Dec {point.DeclinationDeg:0.##}°"),
        _ => "stars",
    };
}
