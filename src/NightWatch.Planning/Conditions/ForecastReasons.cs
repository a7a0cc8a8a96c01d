using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Conditions;

// What is found of the forecast itself.

/// <summary>There is no forecast.</summary>
public sealed record NoForecast() : Reason(Factor.Forecast, Severity.Caution, null, null, null, Unit.Hours, Sources.Formula.FeedRuns);

/// <summary>The forecast's age against the age up to which a forecast is trusted, hours.</summary>
public sealed record ForecastAge(Severity Severity, double AgeH, double LimitH)
    : Reason(Factor.Forecast, Severity, null, AgeH, LimitH, Unit.Hours, Sources.Formula.FeedRuns);

/// <summary>The forecast is too coarse in time to place the edge of a cloud; its age as above.</summary>
public sealed record CoarseForecast(double AgeH, double LimitH)
    : Reason(Factor.Forecast, Severity.Caution, null, AgeH, LimitH, Unit.Hours, Sources.Formula.FeedRuns);

/// <summary>The night is farther off than cloud is forecast, hours; the forecast's age as above.</summary>
public sealed record TooFarAhead(double AheadH, double LimitH, double AgeH, double AgeLimitH)
    : Reason(Factor.Forecast, Severity.Caution, null, AheadH, LimitH, Unit.Hours, Sources.Formula.CloudSkill);
