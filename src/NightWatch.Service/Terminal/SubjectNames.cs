using System.Globalization;
using NightWatch.Sky.Subjects;

namespace NightWatch.Service.Terminal;

/// <summary>What subjects are called on the command line and in a batch's lines.</summary>
internal static class SubjectNames
{
    /// <summary>What is accepted, for messages and help.</summary>
    public const string Accepted =
        "galactic-core, stars, galactic-band L (a galactic longitude), or a showpiece such as \"M 31\" or \"NGC 5139\"";

    private const string GalacticCore = "galactic-core";
    private const string Stars = "stars";
    private const string GalacticBand = "galactic-band";

    private static readonly Subject Core = new Subject.GalacticCore();
    private static readonly Subject NoSubject = new Subject.Stars();

    /// <summary>From a name or a direction to a subject; neither is the galactic core.</summary>
    /// <param name="name">Null: not given.</param>
    /// <param name="rightAscensionDeg">ICRS; null: not given.</param>
    /// <param name="declinationDeg">ICRS; null: not given.</param>
    /// <param name="mark">What stands before a field's name where it was given: two hyphens on the command line, nothing in a file.</param>
    /// <exception cref="BadInputException">Half a direction, both a name and a direction, or a name that is not known.</exception>
    public static Subject SubjectOf(string? name, double? rightAscensionDeg, double? declinationDeg, string mark = "") =>
        (name, rightAscensionDeg, declinationDeg) switch
        {
            (null or GalacticCore, null, null) => Core,
            (Stars, null, null) => NoSubject,
            (null, { } ra, { } dec) => new Subject.FixedPoint("", ra % 360, dec),
            (null, _, _) => throw new BadInputException(
                $"{mark}{(rightAscensionDeg is null ? "ra" : "dec")} is missing; accepted: {mark}ra and {mark}dec together"),
            ({ } given, null, null) => Band(given)
                ?? Showpieces.Find(given)?.ToSubject()
                ?? throw new BadInputException($"{mark}subject: {given} is not known; accepted: {Accepted}, or {mark}ra and {mark}dec"),
            _ => throw new BadInputException($"{mark}subject and {mark}ra, {mark}dec are both given; accepted: one of them"),
        };

    private static Subject.GalacticBand? Band(string name)
    {
        if (!name.StartsWith(GalacticBand, StringComparison.Ordinal)) return null;
        return
            double.TryParse(name.AsSpan(GalacticBand.Length), NumberStyles.Float, CultureInfo.InvariantCulture, out var longitude)
            && longitude is >= 0 and < 360
            ? new Subject.GalacticBand(longitude)
            : throw new BadInputException(
                $"subject {name} has no galactic longitude; accepted: galactic-band L with L from 0 to below 360 degrees");
    }
}
