using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Hazards;

public sealed class HazardJudgeTests
{
    [Fact]
    public void Deadly_cold_stops_the_night_and_stands_before_everything_but_thunder()
    {
        var verdict = new DesertNight
        {
            Weather = new()
            {
                AirC = All(-38),
                DewPointC = All(-48),
                Wind = All(8),
                Gust = All(15),
                Cloud = All(1),
            },
        }
            .Plan()
            .Verdict;

        Assert.Equal((VerdictClass.NoGo, Factor.Hazard), (verdict.Class, verdict.Deciding.Factor));
        Assert.True(verdict.Deciding.IsHazard);
        Assert.Equal(HazardKind.Cold, Assert.IsType<InHarmsWay>(verdict.Deciding).Caution.Kind);
    }

    [Fact]
    public void A_long_day_is_a_caution_of_the_plan_but_does_not_make_the_night_marginal()
    {
        var plan = new DesertNight().Plan();

        Assert.Contains(plan.Cautions, caution => caution.Kind == HazardKind.Fatigue);
        Assert.Equal(VerdictClass.Go, plan.Verdict.Class);
    }
}
