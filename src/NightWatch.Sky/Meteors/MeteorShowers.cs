using System.Globalization;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Tables;
using NodaTime;

namespace NightWatch.Sky.Meteors;

/// <summary>The night showers that a visual observer notices.</summary>
/// <remarks>
/// IAU Meteor Data Center, established showers, after Jenniskens et al. 2016, Icarus 266, 331; activity after NASA's Meteoroid Environment
/// Office. Provenance: Tables/README.md.
/// </remarks>
public static class MeteorShowers
{
    /// <summary>All of them, by IAU number.</summary>
    public static IReadOnlyList<MeteorShower> All { get; } =
    [.. PublishedTable.Rows("meteor-showers.tsv", 19, "2f1ed5b9801bcba007c8be38eabb328fa936bafb7c04a8a0f0bd00e4223126e1").Select(OfRow)];

    /// <summary>The showers that are active in a night, the strongest peak rate first.</summary>
    /// <param name="zone">The site's zone.</param>
    /// <param name="night">Local date of the evening.</param>
    public static IReadOnlyList<ActiveShower> ActiveOn(DateTimeZone zone, LocalDate night)
    {
        var span = NightSpan.Of(zone, night);
        var middle = span.Start + span.Duration / 2;
        var longitude = SolarLongitude.DegAt(middle);
        return
        [
            .. All.Where(shower => shower.IsActiveAt(longitude))
                .OrderByDescending(shower => shower.ZenithalHourlyRate)
                .Select(shower => new ActiveShower(shower, middle, longitude, span.Contains(shower.PeakNear(middle)))),
        ];
    }

    private static MeteorShower OfRow(string[] row)
    {
        var radiant = new Radiant(Number(3), Number(4), Number(5), Number(6), Number(7));
        return new(
            int.Parse(row[0], CultureInfo.InvariantCulture),
            row[1],
            row[2],
            Number(9),
            Number(10),
            Number(11),
            radiant,
            Number(8),
            Number(12));

        double Number(int column) => PublishedTable.Number(row[column]);
    }
}

/// <summary>A shower in one night.</summary>
/// <param name="Shower">The shower.</param>
/// <param name="At">The middle of the night's span.</param>
/// <param name="SolarLongitudeDeg">Of that instant, J2000.0.</param>
/// <param name="PeaksTonight">Its maximum falls between this noon and the next.</param>
public sealed record ActiveShower(MeteorShower Shower, Instant At, double SolarLongitudeDeg, bool PeaksTonight)
{
    /// <summary>Where the radiant stands, J2000.0, degrees.</summary>
    public (double RightAscensionDeg, double DeclinationDeg) Radiant => Shower.Radiant.At(SolarLongitudeDeg);
}
