namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>What a calibration is for: errors differ by feed and grow with lead.</summary>
/// <param name="FeedId">The feed, as in the forecast series.</param>
/// <param name="LeadNights">Nights ahead; 0 on the day.</param>
public readonly record struct CalibrationKey(string FeedId, int LeadNights);
