using NightWatch.Planning.Ground;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Ground;

public sealed class GroundJudgeTests
{
    [Fact]
    public void Wet_ground_is_a_caution_and_a_stop_where_dry_ground_is_needed()
    {
        // Heavy rain until two hours before the run, then dry.
        var soaked = new DesertNight { Weather = new() { Rain = But(0, 0, 5, 6), Cloud = But(0, 0, 5, 1) }, AntecedentRainMm = 40 };
        var needed = soaked with { Watch = soaked.Watch with { Limits = new Limits { DryGroundNeeded = true } } };

        Assert.Equal(GroundState.Wet, soaked.Plan().Ground!.AtStart);
        Assert.Equal(Severity.Caution, soaked.Found(Factor.Ground).Severity);
        Assert.Equal(Severity.Stop, needed.Found(Factor.Ground).Severity);
        Assert.Contains(new PackItem.Waterproofs(IsWet: true), soaked.Plan().Packing);
    }

    [Fact]
    public void Ground_without_a_record_of_rain_is_unknown_and_decides_only_where_dry_ground_is_needed()
    {
        var night = new DesertNight { AntecedentRainMm = null };
        var needed = night with { Watch = night.Watch with { Limits = new Limits { DryGroundNeeded = true } } };

        Assert.Equal((Severity.Ok, true), (night.Found(Factor.Ground).Severity, night.Found(Factor.Ground).IsUnknown));
        Assert.Equal((Severity.Caution, VerdictClass.Marginal), (needed.Found(Factor.Ground).Severity, needed.Plan().Verdict.Class));
    }
}
