using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Conditions;

/// <summary>Whether the forecast can carry a go at all: there is one, it is fresh, fine enough in time, and the night is near.</summary>
internal static class ForecastJudge
{
    /// <param name="series">The forecast; null: none.</param>
    /// <param name="isCoarse">Its steps are too long to place the edge of a cloud.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="runStart">Start of the run.</param>
    /// <param name="limits">The watch's.</param>
    public static Reason Of(ForecastSeries? series, bool isCoarse, Instant now, Instant runStart, Limits limits)
    {
        if (series is not { } forecast) return new NoForecast { Mend = new Mend.Knowledge(Mend.Missing.Forecast) };

        var age = ForecastOrigin.Of(forecast).Age(now).TotalHours;
        var limit = limits.ForecastAgeH;
        var lead = runStart - now;
        if (lead.TotalHours > limits.OutlookOnlyFromH)
        {
            return new TooFarAhead(lead.TotalHours, limits.OutlookOnlyFromH, age, limit)
            {
                Mend = new Mend.NearerNight(limits.OutlookOnlyFromH),
            };
        }

        if (isCoarse) return new CoarseForecast(age, limit) { Mend = new Mend.Knowledge(Mend.Missing.Hourly) };

        return age > limit
            ? new ForecastAge(Severity.Caution, age, limit) { Mend = new Mend.Knowledge(Mend.Missing.Fresh) }
            : new ForecastAge(Severity.Ok, age, limit);
    }
}
