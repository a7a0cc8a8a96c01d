using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Sky.Nights;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Watchkeeping.Evaluations;

/// <summary>One watch and one night, evaluated from what the pass knows.</summary>
/// <param name="Inputs">What it was made from.</param>
/// <param name="Plan">The whole plan.</param>
/// <param name="Runs">The stored forecasts behind it.</param>
internal sealed record NightEvaluation(NightInputs Inputs, NightPlan Plan, InputRuns Runs)
{
    /// <summary>Where a watch's forecast is wanted.</summary>
    public static ForecastPlace PlaceOf(Watch watch) => new(watch.Site.Position.LatitudeDeg, watch.Site.Position.LongitudeDeg, watch.Site.Position.ElevationM);

    /// <summary>Evaluates.</summary>
    /// <param name="watch">The standing order.</param>
    /// <param name="night">Local date of the evening.</param>
    /// <param name="forecast">The weather.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="sky">Kept between nights.</param>
    /// <param name="measured">Rain of the 72 hours before where somebody measured it; null: as the forecasts had it.</param>
    /// <param name="telemetry">Times its two stages; null: nobody asks.</param>
    public static NightEvaluation Of(
        Watch watch, LocalDate night, ForecastAnswer forecast, Instant now, SharedSky sky, RainBefore? measured = null, Telemetry? telemetry = null)
    {
        var inputs = new NightInputs
        {
            Watch = watch,
            Night = night,
            Now = now,
            Forecast = forecast.Series,
            EarlierRuns = forecast.EarlierRuns,
            Members = forecast.Members,
            SecondOpinion = forecast.SecondOpinion,
            Calibrations = forecast.Calibrations,
            Glow = sky.GlowOf(watch.Site),
            RainBefore = measured ?? RainLedger.Antecedent(forecast.Series, forecast.Rain, now),
        };
        var stored = forecast.Stored;
        var runs = new InputRuns(stored.Newest, stored.SecondOpinion, stored.Earlier, stored.Members, forecast.Series?.RetrievedAt, inputs.RainBefore);
        NightSky above;
        using (telemetry?.Begin(Stage.Sky)) above = NightPlanner.SkyOf(inputs, sky.Ephemeris);
        using (telemetry?.Begin(Stage.Plan)) return new NightEvaluation(inputs, NightPlanner.Plan(inputs, above, sky.Ephemeris), runs);
    }

    /// <summary>Equal hashes, equal plans. Worked out when asked for: most plans are looked at and not kept.</summary>
    public string InputsHash()
    {
        // The stored answers by their ids; a confirmation moves the newest one's time, and the rain comes from many.
        var weather = $"{string.Join(',', Runs.All())}|{Inputs.Forecast?.RetrievedAt.ToUnixTimeTicks()}|{Inputs.RainBefore}|{Plan.Verdict.Probability.CalibrationVersion}";
        var inputs = $"{JsonSerializer.Serialize(Inputs.Watch, WatchJson.Options)}|{Inputs.Night:R}|{Inputs.Now.ToUnixTimeTicks()}|{weather}";
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(inputs)).AsSpan(0, 16));
    }
}
