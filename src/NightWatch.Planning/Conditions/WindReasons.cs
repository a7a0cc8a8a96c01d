using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Conditions;

// What is found of the wind.

/// <summary>The strongest gust of the run, m/s, and when it is reached first.</summary>
public sealed record Gusts(Severity Severity, Interval? When, double GustMps, Instant At, Threshold LimitsMps)
    : Reason(Factor.Wind, Severity, When, GustMps, Held(Severity, LimitsMps), Unit.MetresPerSecond, Sources.Formula.FeedValues);

/// <summary>The feed gives no gusts; they are put at a multiple of its mean wind, both m/s.</summary>
public sealed record GustsFromMeanWind(Severity Severity, Interval? When, double WindMps, double GustMps, Threshold LimitsMps)
    : Reason(Factor.Wind, Severity, When, GustMps, Held(Severity, LimitsMps), Unit.MetresPerSecond, Sources.Formula.InlandGusts);

/// <summary>Neither gusts nor mean wind are known for all of the run.</summary>
public sealed record WindNotKnown(Severity Severity, Interval? When, double LimitMps)
    : Reason(Factor.Wind, Severity, When, null, LimitMps, Unit.MetresPerSecond, Sources.Formula.FeedValues);
