namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the forecast can carry a go at all: there is one, it is fresh, fine enough in time, and the night is near.</summary>
internal sealed class ForecastFactor : FactorRule
{
    public override Factor Factor => Factor.Forecast;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var inputs = night.Inputs;
        if (inputs.Weather.Newest is not { } forecast) return new Reason.NoForecast { Mend = new Mend.Knowledge(Mend.Missing.Forecast) };

        var age = ForecastOrigin.Of(forecast).Age(inputs.Now).TotalHours;
        var limit = night.Limits.ForecastAgeH;
        var lead = plan.Run.Span.Start - inputs.Now;
        if (lead.TotalHours > night.Limits.OutlookOnlyFromH)
        {
            return new Reason.TooFarAhead(lead.TotalHours, night.Limits.OutlookOnlyFromH, age, limit)
            {
                Mend = new Mend.NearerNight(night.Limits.OutlookOnlyFromH),
            };
        }

        if (night.Weather.Coarse) return new Reason.CoarseForecast(age, limit) { Mend = new Mend.Knowledge(Mend.Missing.Hourly) };

        return age > limit
            ? new Reason.ForecastAge(Severity.Caution, age, limit) { Mend = new Mend.Knowledge(Mend.Missing.Fresh) }
            : new Reason.ForecastAge(Severity.Ok, age, limit);
    }
}
