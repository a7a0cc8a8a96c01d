using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Evaluations;

/// <summary>One watch and one night, evaluated from what the pass knows.</summary>
/// <param name="Inputs">What it was made from.</param>
/// <param name="Plan">The whole plan.</param>
internal sealed record NightEvaluation(NightInputs Inputs, NightPlan Plan)
{
    /// <summary>The stored forecasts behind it.</summary>
    public InputForecastRuns Runs => InputForecastRuns.Of(Inputs.Weather, Inputs.RainBefore);

    /// <summary>Where a watch's forecast is wanted.</summary>
    public static ForecastPlace PlaceOf(Watch watch) =>
        new(watch.Site.Position.LatitudeDeg, watch.Site.Position.LongitudeDeg, watch.Site.Position.ElevationM);

    /// <summary>Evaluates with the weather and the chances that a pass knows.</summary>
    public static async Task<NightEvaluation> AskAsync(
        Watch watch, LocalDate night, PassForecasts forecasts, Instant now, SharedSky sky, VerdictClass? lastTold) =>
        Of(watch, night, await forecasts.AskAsync(PlaceOf(watch)), await forecasts.BookAsync(), now, sky, lastTold: lastTold);

    /// <summary>What a night was like: the same evaluation over the hours that came, with nothing left to chance.</summary>
    public static NightPlan Came(Watch watch, LocalDate night, ForecastSeries hours, Instant now, SharedSky sky)
    {
        var inputs = InputsOf(watch, night, new PlaceWeather { Newest = hours }, ChanceBook.Shipped, now, sky) with { HasCome = true };
        return NightPlanner.Plan(inputs, sky.Ephemeris);
    }

    /// <summary>Evaluates. Pure.</summary>
    /// <param name="watch">The standing order.</param>
    /// <param name="night">Local date of the evening.</param>
    /// <param name="weather">At the site.</param>
    /// <param name="chances">The chance by feed and lead.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="sky">Kept between nights.</param>
    /// <param name="measured">Rain of the 72 hours before where somebody measured it; null: as the forecasts had it.</param>
    /// <param name="lastTold">What the reader was told last of the night; null: nothing.</param>
    public static NightEvaluation Of(
        Watch watch, LocalDate night, PlaceWeather weather, ChanceBook chances, Instant now, SharedSky sky, RainBefore? measured = null,
        VerdictClass? lastTold = null)
    {
        var inputs = InputsOf(watch, night, weather, chances, now, sky, measured, lastTold);
        return new NightEvaluation(inputs, NightPlanner.Plan(inputs, sky.Ephemeris));
    }

    /// <summary>What <see cref="Of"/> plans from.</summary>
    public static NightInputs InputsOf(
        Watch watch, LocalDate night, PlaceWeather weather, ChanceBook chances, Instant now, SharedSky sky, RainBefore? measured = null,
        VerdictClass? lastTold = null) => new()
        {
            LastTold = lastTold,
            Watch = watch,
            Night = night,
            Now = now,
            Weather = weather,
            Chances = chances,
            Glow = sky.GlowOf(watch.Site),
            RainBefore = measured ?? RainLedger.Antecedent(weather.Newest, weather.Rain, now),
        };

    /// <summary>Equal hashes, equal plans. Worked out when asked for: most plans are looked at and not kept.</summary>
    public string InputsHash()
    {
        // The stored answers by their ids; a confirmation moves the newest one's time, and the rain comes from many.
        var weather =
            $"{string.Join(',', Runs.All())}|{Inputs.Weather.Newest?.RetrievedAt.ToUnixTimeTicks()}|{Inputs.RainBefore}|" +
            $"{Plan.Verdict.Probability.CalibrationVersion}|{Inputs.LastTold}";
        var inputs =
            $"{JsonSerializer.Serialize(Inputs.Watch, WatchJson.Options)}|{Inputs.Night:R}|{Inputs.Now.ToUnixTimeTicks()}|{weather}";
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(inputs)).AsSpan(0, 16));
    }
}
