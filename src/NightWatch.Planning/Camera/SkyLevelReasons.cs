using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Camera;

// How bright the sky comes out in the frames, as a share of saturation.

/// <summary>The sky passes the limit in the sequence: from when, by what, and the last frame before it (null: already the first).</summary>
public sealed record SkyWashedOut(
    Interval? When, double ExposureS, int Iso, double Most, double LimitHeld, Instant From, SkyLift? LiftedBy, int? LastSoundShot)
    : Reason(Factor.SkyLevel, Severity.Caution, When, Most, LimitHeld, Unit.Fraction, Sources.Formula.SkyExposure);

/// <summary>The sky stays below the limit; null: also after the last frame until sunrise.</summary>
public sealed record SkyLevelHeld(
    double ExposureS, int Iso, double Least, double Most, double LimitHeld, Instant? PastLimitFrom, SkyLift? LiftedBy)
    : Reason(Factor.SkyLevel, Severity.Ok, null, Most, LimitHeld, Unit.Fraction, Sources.Formula.SkyExposure);
