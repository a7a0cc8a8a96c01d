using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Conditions;

// What is found of the cloud.

/// <summary>Mean total cloud over the run, its most and when, and the share of the run it is not known for; fractions.</summary>
public sealed record CloudMean(
    Severity Severity, Interval? When, double Mean, double Most, Instant MostAt, Threshold Limits, double UnknownShare)
    : Reason(Factor.Cloud, Severity, When, Mean, Held(Severity, Limits), Unit.Fraction, Sources.Formula.FeedValues);

/// <summary>No hour of the run has a figure of cloud (limit: a fraction).</summary>
public sealed record CloudNotKnown(Severity Severity, Interval? When, double LimitHeld)
    : Reason(Factor.Cloud, Severity, When, null, LimitHeld, Unit.Fraction, Sources.Formula.FeedValues);
