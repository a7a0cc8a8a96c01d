using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>
/// Watches at places drawn from a seed, spread over the latitudes from which the core is worth a drive. The invented weather knows no
/// coast, so a place may lie at sea. The kit is ample: what is judged is the sky and the weather.
/// </summary>
internal static class SimulatedSites
{
    private const double FarthestLatitudeDeg = 48;

    /// <summary>The watches; the same seed gives the same, and more of them begin with the fewer.</summary>
    public static IReadOnlyList<Watch> Of(int seed, int count)
    {
        // System.Random with a seed is the same on every platform and version of .NET since 6.
        var chance = new Random(seed);
        return
        [
            .. Enumerable.Range(1, count).Select(number => Make(number, chance.NextDouble(), chance.NextDouble(), chance.NextDouble())),
        ];
    }

    private static Watch Make(int number, double north, double east, double high)
    {
        var position = new GeoPosition(FarthestLatitudeDeg * (2 * north - 1), 360 * east - 180, Math.Round(1500 * high));
        // The zone of the meridian: "Etc/GMT-10" is ten hours east.
        var hours = (int)Math.Round(position.LongitudeDeg / 15);
        var zone = DateTimeZoneProviders.Tzdb[
            hours == 0 ? "Etc/GMT" : FormattableString.Invariant($"Etc/GMT{(hours > 0 ? "-" : "+")}{Math.Abs(hours)}")
        ];
        var id = FormattableString.Invariant($"place-{number}");
        return new Watch
        {
            Id = id,
            Subscriber = new Subscriber("", "nobody@example.org"),
            Site = new Site
            {
                Id = id,
                Name = $"Place {number}",
                Position = position,
                Zone = zone,
                MeasuredSkyBrightness = 21.7,
                Ground = GroundKind.Gravel,
            },
            Kit = new Kit
            {
                DewHeaterW = 6,
                DewHeaterBatteryWh = 74,
                BatteriesWh = [99, 99],
                CardGb = 256,
            },
        };
    }
}
