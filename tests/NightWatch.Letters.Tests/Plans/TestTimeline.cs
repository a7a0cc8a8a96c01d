using NightWatch.Planning.Nights;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>The clock times that go with <see cref="TestSky"/>.</summary>
internal static class TestTimeline
{
    public static IReadOnlyList<PackItem> Packing { get; } =
    [
        new PackItem.Camera(), new PackItem.HeadLamp(), new PackItem.Cards(25.5, 850, null), new PackItem.Batteries([14.4, 14.4], null), new PackItem.Heater(3, null, null),
        new PackItem.WarmClothes(8, IsFreezing: false), new PackItem.Provisions(),
    ];

    public static IReadOnlyList<TimelineEntry> Of(NightSky sky, Interval? run)
    {
        if (run is not { } r)
            return [new TimelineEntry.Bare(sky.Sun.Set!.Value, TimelineStep.Sunset), new TimelineEntry.Bare(sky.Sun.Rise!.Value, TimelineStep.Sunrise)];
        Instant Evening(int h, int m) => TestSky.Local(sky.Night, h, m, sky.Zone);
        Instant Morning(int h, int m) => TestSky.Local(sky.Night.PlusDays(1), h, m, sky.Zone);
        return
        [
            new TimelineEntry.Nap(Evening(15, 0), Evening(18, 0), 22),
            new TimelineEntry.Bare(Evening(18, 0), TimelineStep.Pack),
            new TimelineEntry.LeaveHome(Evening(18, 45), 70, Evening(21, 20)),
            new TimelineEntry.Arrive(Evening(19, 55), 75, InDaylight: true),
            new TimelineEntry.Bare(Evening(21, 34), TimelineStep.Sunset),
            new TimelineEntry.Bare(Evening(22, 49), TimelineStep.NauticalDusk),
            new TimelineEntry.Bare(Evening(23, 42), TimelineStep.AstronomicalDusk),
            new TimelineEntry.SubjectLimit(Evening(23, 55), Clears: true, 10),
            new TimelineEntry.FirstFrame(r.Start, 850, 15, 18, 35.4, 24),
            new TimelineEntry.HeaterOn(Morning(2, 10), 2, IsFrost: false, 3),
            new TimelineEntry.SubjectHighest(Morning(2, 19), 20.6),
            new TimelineEntry.Bare(Morning(2, 30), TimelineStep.SwapBattery),
            new TimelineEntry.LastFrame(r.End, LastFrameCause.SkyPales),
            new TimelineEntry.Bare(Morning(4, 31), TimelineStep.AstronomicalDawn),
            new TimelineEntry.Bare(Morning(6, 39), TimelineStep.Sunrise),
            new TimelineEntry.DriveHome(Morning(6, 45), 22, IsTooLong: true),
        ];
    }
}
