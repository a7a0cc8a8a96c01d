using NightWatch.Planning.Nights;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>The clock times that go with <see cref="TestSky"/>.</summary>
internal static class TestTimeline
{
    public static IReadOnlyList<string> Packing { get; } =
    [
        "Body, 20 mm lens, rail, head and controller",
        "2 batteries of 14.4 Wh (the night takes 19 Wh) and a third as reserve",
        "One 128 GB card (25.5 GB needed)",
        "Heater and its battery: 3 W from 02:10",
        "Warm layers for 8 °C and a light wind; red lamp; water",
    ];

    public static IReadOnlyList<TimelineEntry> Of(NightSky sky, Interval? run)
    {
        if (run is not { } r)
            return [new(sky.Sun.Set!.Value, TimelineStep.Sunset, "Sunset"), new(sky.Sun.Rise!.Value, TimelineStep.Sunrise, "Sunrise")];
        Instant Evening(int h, int m) => TestSky.Local(sky.Night, h, m, sky.Zone);
        Instant Morning(int h, int m) => TestSky.Local(sky.Night.PlusDays(1), h, m, sky.Zone);
        return
        [
            new(Evening(15, 0), TimelineStep.Sleep, "Nap, 90 minutes", "You would be awake 22 hours at the drive home without it."),
            new(Evening(18, 0), TimelineStep.Pack, "Pack", "Batteries charged, card empty, heater tested."),
            new(Evening(18, 45), TimelineStep.LeaveHome, "Leave home", "70 min of driving, 75 min to set up, and an hour of daylight in hand."),
            new(Evening(19, 55), TimelineStep.Arrive, "Arrive in daylight"),
            new(Evening(21, 34), TimelineStep.Sunset, "Sunset"),
            new(Evening(22, 49), TimelineStep.NauticalDusk, "Nautical dusk: focus on a star"),
            new(Evening(23, 42), TimelineStep.AstronomicalDusk, "Fully dark"),
            new(Evening(23, 55), TimelineStep.SubjectClear, "Core clear of the ridge", "10° in the south-east."),
            new(r.Start, TimelineStep.Start, "First frame"),
            new(Morning(2, 10), TimelineStep.HeaterOn, "Heater on"),
            new(Morning(2, 19), TimelineStep.SubjectTransit, "Core at its highest, 20.6°"),
            new(Morning(2, 30), TimelineStep.SwapBattery, "Change the battery"),
            new(r.End, TimelineStep.LastFrame, "Last frame"),
            new(Morning(4, 31), TimelineStep.AstronomicalDawn, "Dawn begins"),
            new(Morning(6, 39), TimelineStep.Sunrise, "Sunrise"),
            new(Morning(6, 45), TimelineStep.DriveHome, "Sleep first, then drive", "Driving tired is the most dangerous part of the night."),
        ];
    }
}
