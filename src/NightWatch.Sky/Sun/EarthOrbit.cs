using NightWatch.Sky.Frames;
using NightWatch.Sky.Tables;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Sun;

/// <summary>Where the Earth is and how it moves, ICRS axes, au and au per day.</summary>
/// <param name="Heliocentric">From the Sun's centre.</param>
/// <param name="Velocity">Against the solar system's barycentre.</param>
/// <param name="SunVelocity">The Sun's own, against the barycentre.</param>
/// <remarks>
/// Simplified VSOP2000 (Moisson and Bretagnon 2001, CMDA 80, 205) turned to the axes of DE405. Stated error 1900-2100: 3.7 km rms,
/// 11.2 km at most (0.015″ of Sun); velocity 5 mm/s at most.
/// </remarks>
public readonly record struct EarthOrbit(Vector3D Heliocentric, Vector3D Velocity, Vector3D SunVelocity)
{
    private static readonly Dictionary<string, HarmonicSeries[]> Series =
        PublishedTable.Rows("earth.tsv", 1951, "5cbef7728ff67c13d5533ce9d8e8094f885e85246ee907b89ab1c0056ddcd039")
            .GroupBy(row => row[0])
            .ToDictionary(axis => axis.Key, axis => axis.GroupBy(row => row[1]).Select(OfPower).ToArray());

    // The Euler angles of the fit to DE405: 23°26′21.4091″ about x, then 0.0475″ about z.
    private static readonly Rotation ToIcrs = new(
        new(1, 0.000000211284, -0.000000091603),
        new(-0.000000230286, 0.917482137087, -0.397776982902),
        new(0, 0.397776982902, 0.917482137087));

    /// <summary>The Earth at an instant, 1900 to 2100.</summary>
    public static EarthOrbit At(TerrestrialTime tt)
    {
        var (earth, earthRate) = Vector("e", tt.Years);
        var (_, sunRate) = Vector("s", tt.Years);
        return new(ToIcrs * earth, ToIcrs * (earthRate + sunRate), ToIcrs * sunRate);
    }

    // The table's terms are cosines; a sine series takes them with a quarter turn more.
    private static HarmonicSeries OfPower(IEnumerable<string[]> rows) =>
        new([.. rows.Select(row => new[]
        {
            PublishedTable.Number(row[2]), PublishedTable.Number(row[3]) + Math.PI / 2, PublishedTable.Number(row[4]),
        })]);

    private static (Vector3D Position, Vector3D PerDay) Vector(string body, double years)
    {
        var (x, dx) = Axis(Series[body + "x"], years);
        var (y, dy) = Axis(Series[body + "y"], years);
        var (z, dz) = Axis(Series[body + "z"], years);
        return (new(x, y, z), 1 / 365.25 * new Vector3D(dx, dy, dz));
    }

    private static (double Value, double Rate) Axis(HarmonicSeries[] powers, double t)
    {
        double value = 0, rate = 0;
        for (var power = powers.Length - 1; power >= 0; power--)
        {
            var (sum, sumRate) = powers[power].WithRateAt(t);
            rate = rate * t + value + sumRate;
            value = value * t + sum;
        }

        return (value, rate);
    }
}
