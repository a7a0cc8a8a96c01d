namespace NightWatch.Planning.Judging;

/// <summary>Whether the forecast can carry a go at all: there is one, it is fresh, fine enough in time, and the night is near.</summary>
internal sealed class ForecastFactor : FactorRule
{
    public override Factor Factor => Factor.Forecast;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var inputs = night.Inputs;
        if (inputs.Weather.Newest is not { } forecast)
        {
            return new Reason(
                Factor, Severity.Caution, null, null, null, Unit.Hours, "There is no forecast; the sky is right but the weather is unknown.",
                "A forecast for the night.");
        }

        var age = ForecastOrigin.Of(forecast).Age(inputs.Now).TotalHours;
        var limit = night.Limits.ForecastAgeH;
        var isOld = age > limit;
        var said = isOld
            ? $"The forecast is {Said.Number(age)} h old, and no newer one could be had; up to {Said.Number(limit)} h it is trusted."
            : $"The forecast is {Said.Number(age)} h old.";
        var lead = plan.Run.Span.Start - inputs.Now;
        if (lead.TotalHours > night.Limits.OutlookOnlyFromH)
        {
            return new Reason(
                Factor, Severity.Caution, null, lead.TotalHours, night.Limits.OutlookOnlyFromH, Unit.Hours,
                $"The night is {Said.Number(lead.TotalDays)} days away; that far cloud is forecast no better than by the climate, so this is an outlook only. {said}",
                $"The same forecast {Said.Number(night.Limits.OutlookOnlyFromH / 24)} days ahead or less.", "Ye and Chen 2013, MNRAS 428, 3288");
        }

        if (night.Weather.Coarse)
        {
            return new Reason(
                Factor, Severity.Caution, null, age, limit, Unit.Hours,
                $"The forecast has only a value every few hours for this night, too coarse to place the edge of a cloud. {said}",
                "Hourly values, which the feed gives nearer the night.");
        }

        return new Reason(
            Factor, isOld ? Severity.Caution : Severity.Ok, null, age, limit, Unit.Hours, said, isOld ? "A fresh forecast." : null);
    }
}
