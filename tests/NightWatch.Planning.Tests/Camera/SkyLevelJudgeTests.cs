using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Watches;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.DesertNight;

namespace NightWatch.Planning.Tests.Camera;

public sealed class SkyLevelJudgeTests
{
    [Fact]
    public void Moonlight_that_passes_the_level_names_the_last_sound_frame()
    {
        // Three magnitudes are sixteen times the light: 15 % of saturation would pass half of it.
        var night = new DesertNight { MoonBrightening = hour => hour >= 24 ? 3 : 0 };
        night = night with
        {
            Watch = night.Watch with
            {
                Kit = new Kit { FNumber = 1.4, Iso = 12_800 },
                Limits = new Limits { DarkFullMag = 18, DarkNothingMag = 15 },
            },
        };
        var plan = night.Plan();

        Assert.Equal(Severity.Caution, night.Found(Factor.SkyLevel).Severity);
        Assert.InRange(plan.SkyLevel!.WashedOutFrom!.Value, Clock(23, 55), Clock(24, 0));
        var lastSound =
            plan.Sequence!.Span.Start
            + Duration.FromSeconds((plan.SkyLevel.LastSoundShot!.Value - 1) * plan.Sequence.IntervalS + plan.Sequence.ExposureS);
        Assert.True(lastSound <= plan.SkyLevel.WashedOutFrom);
        Assert.True(lastSound + Duration.FromSeconds(plan.Sequence.IntervalS) > plan.SkyLevel.WashedOutFrom);
    }
}
