namespace NightWatch.Planning.Verdicts.Factors;

/// <summary>Whether the forecast can carry a go at all: there is one, it is fresh, fine enough in time, and the night is near.</summary>
internal sealed class ForecastFactor : FactorRule
{
    public override Factor Factor => Factor.Forecast;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var inputs = night.Inputs;
        if (inputs.Forecast is not { } forecast)
        {
            return new Reason(
                Factor, Severity.Caution, null, null, null, Unit.Hours, "There is no forecast; the sky is right but the weather is unknown.",
                "A forecast for the night.");
        }

        var age = inputs.Now - (forecast.IssuedAt ?? forecast.RetrievedAt);
        var lead = plan.Run.Span.Start - inputs.Now;
        if (lead.TotalHours > night.Limits.OutlookOnlyFromH)
        {
            return new Reason(
                Factor, Severity.Caution, null, lead.TotalHours, night.Limits.OutlookOnlyFromH, Unit.Hours,
                $"The night is {Said.Number(lead.TotalDays)} days away; that far cloud is forecast no better than by the climate, so this is an outlook only.",
                $"The same forecast {Said.Number(night.Limits.OutlookOnlyFromH / 24)} days ahead or less.", "Ye and Chen 2013, MNRAS 428, 3288");
        }

        if (night.Weather.Coarse)
        {
            return new Reason(
                Factor, Severity.Caution, null, age.TotalHours, null, Unit.Hours,
                "The forecast has only a value every few hours for this night, too coarse to place the edge of a cloud.",
                "Hourly values, which the feed gives nearer the night.");
        }

        var limit = night.Limits.ForecastAgeH;
        return age.TotalHours > limit
            ? new Reason(
                Factor, Severity.Caution, null, age.TotalHours, limit, Unit.Hours,
                $"The forecast is {Said.Number(age.TotalHours)} h old; up to {Said.Number(limit)} h it is trusted.", "A fresh forecast.")
            : new Reason(
                Factor, Severity.Ok, null, age.TotalHours, limit, Unit.Hours, $"The forecast is {Said.Number(Math.Max(0, age.TotalHours))} h old.");
    }
}
