namespace NightWatch.Sky.Subjects;

/// <summary>A cluster, nebula or galaxy that photographers know by its number.</summary>
/// <param name="Designations">Catalogue numbers, the usual one first: "M 31", "NGC 224".</param>
/// <param name="Names">What it is called; may be empty.</param>
/// <param name="Kind">Galaxy, nebula, open cluster...</param>
/// <param name="RightAscensionDeg">ICRS, degrees.</param>
/// <param name="DeclinationDeg">ICRS, degrees.</param>
public sealed record Showpiece(
    IReadOnlyList<string> Designations, IReadOnlyList<string> Names, string Kind, double RightAscensionDeg, double DeclinationDeg)
{
    /// <summary>"M 31 Andromeda Galaxy", or the number alone.</summary>
    public string Title => Names.Count > 0 ? $"{Designations[0]} {Names[0]}" : Designations[0];

    /// <summary>The same as a subject for the camera.</summary>
    public Subject ToSubject() => new Subject.FixedPoint(Title, RightAscensionDeg, DeclinationDeg);
}
