using NightWatch.Planning.Verdicts;

namespace NightWatch.Store.Verdicts;

/// <summary>What a verdict says of worth, as its column keeps it.</summary>
/// <param name="UsableMin">Minutes of good frames, to the minute's tenth.</param>
/// <param name="ForecastMin">Those of the plan as it stands; null: the weather was not known.</param>
/// <param name="Needs">What must be done first.</param>
/// <param name="HoldsOnceDone">It is a go once that is done.</param>
/// <param name="DrivesPerLostNight">What the night was worth to the reader; null: not asked.</param>
internal sealed record StoredWorth(
    double? UsableMin, double? ForecastMin, IReadOnlyList<Need> Needs, bool HoldsOnceDone, double? DrivesPerLostNight)
{
    public static StoredWorth Of(Verdict verdict) => new(
        Tenth(verdict.UsableMin), Tenth(verdict.ForecastMin), verdict.Needs, verdict.HoldsOnceDone, verdict.TradeOff?.DrivesPerLostNight);

    public Verdict Onto(Verdict verdict) => verdict with
    {
        UsableMin = UsableMin,
        ForecastMin = ForecastMin,
        Needs = Needs,
        HoldsOnceDone = HoldsOnceDone,
        TradeOff = DrivesPerLostNight is { } drives ? new TradeOff(drives) : null,
    };

    private static double? Tenth(double? minutes) => minutes is { } value ? Math.Round(value, 1) : null;
}
