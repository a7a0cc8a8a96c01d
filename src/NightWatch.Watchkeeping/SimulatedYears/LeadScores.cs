using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Planning.Verification.Calls;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>How calls and probabilities did so many nights ahead.</summary>
/// <param name="LeadNights">Nights ahead; 0 is the last look at home on the day.</param>
/// <param name="Raw">As computed.</param>
/// <param name="Calibrated">By parameters learnt on other fortnights; as computed where calibration is off.</param>
/// <param name="Calibration">What the whole record teaches, and the proof.</param>
internal sealed record LeadScores(int LeadNights, CallScores Raw, CallScores Calibrated, Calibration Calibration)
{
    private const string FeedId = "fake";

    /// <param name="lead">Nights ahead.</param>
    /// <param name="nights">At least one.</param>
    /// <param name="end">When the years are over and the calibration is learnt.</param>
    public static LeadScores Of(int lead, IReadOnlyList<SimulatedNight> nights, Instant end)
    {
        ScoredCall[] calls = [.. nights.Select(night => night.CallAt(lead))];
        DatedPair[] pairs = [.. calls.Select(call => new DatedPair(call.Night, call.Pair))];
        var calibration = Calibration.Learn(Calibration.None(new CalibrationKey(FeedId, lead), end), pairs, end);
        var held = HeldOut(calibration, pairs);
        return new LeadScores(lead, CallScores.Of(calls), CallScores.Of([.. calls.Select((call, i) => call with { Probability = held[i] })]), calibration);
    }

    /// <summary>Each pair by what the other fortnights teach, in the way that was found the best.</summary>
    private static double[] HeldOut(Calibration calibration, DatedPair[] pairs) => calibration.Map switch
    {
        CalibrationMap.Logistic => CrossValidation.Of(pairs, LogisticFit.Of).Calibrated,
        CalibrationMap.Isotonic => CrossValidation.Of(pairs, IsotonicFit.Of).Calibrated,
        _ => [.. pairs.Select(pair => pair.Pair.Probability)],
    };
}
