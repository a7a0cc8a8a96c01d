using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>The watch that an archive is judged for unless another is given: any dark, clear sky will do,
/// and nothing but the weather can spoil it.</summary>
internal static class ArchiveWatch
{
    /// <param name="place">Name of the place.</param>
    /// <param name="position">Where it is.</param>
    /// <param name="zone">Its zone.</param>
    public static Watch Of(string place, GeoPosition position, DateTimeZone zone) => new()
    {
        Id = "archive",
        Subscriber = new Subscriber("", "nobody@example.org"),
        Site = new Site
        {
            Id = "archive",
            Name = place,
            Position = position,
            Zone = zone,
            MeasuredSkyBrightness = 21.9,
            Ground = GroundKind.Gravel,
        },
        Subject = new Subject.Stars(),
        Kit = new Kit { DewHeaterW = 8, DewHeaterBatteryWh = 300, BatteriesWh = [200, 200], CardGb = 1024 },
        Limits = new Limits { UsableRunMin = 90 },
    };
}
