using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Dew;

public sealed class DewJudgeTests
{
    [Fact]
    public void Dew_without_a_heater_is_a_caution_with_its_onset_and_a_heater_makes_it_a_go()
    {
        var night = new DesertNight { Weather = new() { DewPointC = All(10), Wind = All(0.5) } };
        var bare = night.Plan();
        var heated = (
            night with
            {
                Watch = night.Watch with { Kit = night.Watch.Kit with { DewHeaterW = 8, DewHeaterBatteryWh = 100 } },
            }).Plan();

        Assert.Equal((VerdictClass.Marginal, Factor.Dew), (bare.Verdict.Class, bare.Verdict.Deciding.Factor));
        Assert.NotNull(bare.Summary.DewOnset);
        Assert.IsType<Mend.Heater>(bare.Verdict.Deciding.Mend);
        Assert.Equal(VerdictClass.Go, heated.Verdict.Class);
        Assert.Contains(heated.Timeline, entry => entry.Step == TimelineStep.HeaterOn);
    }
}
