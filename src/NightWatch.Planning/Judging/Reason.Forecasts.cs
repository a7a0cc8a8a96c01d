using NodaTime;

namespace NightWatch.Planning.Judging;

// What is found of the forecast itself, and of a second one.
public abstract partial record Reason
{
    /// <summary>
    /// Mean cloud of a second feed over the run and of the first (null: unknown), fractions, and whether the second finds a usable
    /// run.
    /// </summary>
    public sealed record SecondForecast(
        Severity Severity, Interval? When, double Cloud, double? FirstCloud, bool IsUsable, double LimitHeld)
        : Reason(
            Factor.Disagreement, Severity, When, FirstCloud is { } first ? Math.Abs(first - Cloud) : null, LimitHeld,
            Unit.Fraction, Sources.Formula.FeedRuns);

    /// <summary>There is none.</summary>
    public sealed record NoForecast() : Reason(Factor.Forecast, Severity.Caution, null, null, null, Unit.Hours, Sources.Formula.FeedRuns);

    /// <summary>Its age against the age up to which it is trusted, hours.</summary>
    public sealed record ForecastAge(Severity Severity, double AgeH, double LimitH)
        : Reason(Factor.Forecast, Severity, null, AgeH, LimitH, Unit.Hours, Sources.Formula.FeedRuns);

    /// <summary>Too coarse in time to place the edge of a cloud; its age as above.</summary>
    public sealed record CoarseForecast(double AgeH, double LimitH)
        : Reason(Factor.Forecast, Severity.Caution, null, AgeH, LimitH, Unit.Hours, Sources.Formula.FeedRuns);

    /// <summary>The night is farther off than cloud is forecast, hours; the forecast's age as above.</summary>
    public sealed record TooFarAhead(double AheadH, double LimitH, double AgeH, double AgeLimitH)
        : Reason(Factor.Forecast, Severity.Caution, null, AheadH, LimitH, Unit.Hours, Sources.Formula.CloudSkill);
}
