using NightWatch.Sky.Places;

namespace NightWatch.Pages.MyWatches;

/// <summary>A skyline being edited.</summary>
/// <param name="Id">The watch.</param>
/// <param name="Name">The place.</param>
/// <param name="Rows">Azimuth and altitude as typed; empty rows for more.</param>
/// <param name="Fault">What is wrong; null: nothing.</param>
public sealed record HorizonModel(string Id, string Name, IReadOnlyList<(string Azimuth, string Altitude)> Rows, string? Fault)
{
    private const int Spare = 4;

    public static HorizonModel Of(string id, string name, HorizonProfile horizon) =>
        new(
            id,
            name,
            [
                .. horizon.Points.Select(point =>
                    (FormattableString.Invariant($"{point.AzimuthDeg:0.##}"), FormattableString.Invariant($"{point.AltitudeDeg:0.##}"))),
                .. Enumerable.Repeat(("", ""), Spare),
            ],
            null);
}
