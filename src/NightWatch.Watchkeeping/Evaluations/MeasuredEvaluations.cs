using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Watchkeeping.Evaluations;

/// <summary>Evaluations whose two stages are timed from outside: the same as <see cref="NightEvaluation.Of"/>.</summary>
internal sealed class MeasuredEvaluations(SharedSky sky, Telemetry telemetry)
{
    public NightEvaluation Of(
        Watch watch, LocalDate night, PlaceWeather weather, ChanceBook chances, Instant now, VerdictClass? lastTold = null)
    {
        var inputs = NightEvaluation.InputsOf(watch, night, weather, chances, now, sky, lastTold: lastTold);
        return new NightEvaluation(inputs, PlanOf(inputs, SkyOf(inputs)));
    }

    private NightSky SkyOf(NightInputs inputs)
    {
        using var timer = telemetry.Begin(Stage.Sky);
        return NightPlanner.SkyOf(inputs, sky.Ephemeris);
    }

    private NightPlan PlanOf(NightInputs inputs, NightSky above)
    {
        using var timer = telemetry.Begin(Stage.Plan);
        return NightPlanner.Plan(inputs, above, sky.Ephemeris);
    }
}
