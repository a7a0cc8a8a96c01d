using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;
using NodaTime.TimeZones;

namespace NightWatch.Bench.Sky;

/// <summary>A reproducible set of sites all over the Earth, each with a real zone, and of nights from 2000 to 2050.</summary>
internal sealed class SiteNights
{
    private static readonly Subject[] Subjects =
        [new Subject.GalacticCore(), new Subject.GalacticBand(80), new Subject.FixedPoint("Andromeda Galaxy", 10.6847, 41.2687)];

    public SiteNights(int sites, int nights, int seed)
    {
        var random = new Random(seed);
        // The places of the zone database, moved up to 3° so that no two are the same; a tenth anywhere, pole to pole.
        var places = TzdbDateTimeZoneSource.Default.ZoneLocations!.ToArray();
        Sites = new Site[sites];
        for (var i = 0; i < sites; i++)
        {
            var place = places[random.Next(places.Length)];
            var anywhere = random.Next(10) == 0;
            var latitude = anywhere ? random.NextDouble() * 180 - 90 : place.Latitude + random.NextDouble() * 6 - 3;
            var longitude = anywhere ? random.NextDouble() * 360 - 180 : place.Longitude + random.NextDouble() * 6 - 3;
            Sites[i] = new(
                new(Math.Clamp(latitude, -90, 90), Math.IEEERemainder(longitude, 360), random.NextDouble() * 6000),
                DateTimeZoneProviders.Tzdb[place.ZoneId],
                SubjectDirection.Icrs(Subjects[random.Next(Subjects.Length)])!.Value);
        }

        Nights = new LocalDate[nights];
        for (var i = 0; i < nights; i++) Nights[i] = new LocalDate(2000, 1, 1).PlusDays(random.Next(18263));
    }

    public Site[] Sites { get; }

    public LocalDate[] Nights { get; }

    internal sealed record Site(GeoPosition Position, DateTimeZone Zone, Vector3D Subject);
}
