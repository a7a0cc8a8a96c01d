namespace NightWatch.Planning.Verification.Expenses;

/// <summary>One look at one night, to be scored by what came.</summary>
/// <param name="Probability">Said, 0 to 1.</param>
/// <param name="MayGo">No hazard and no hard edge of the watch kept the reader at home whatever the chance.</param>
/// <param name="WithinFixedLimits">The worst of the fixed limits was no stop; null: nobody looked.</param>
/// <param name="DarkCloud">Mean forecast cloud of the dark hours in the newest run, fraction; null:
/// not known, and nobody goes by it.</param>
/// <param name="Usable">The night came usable.</param>
public readonly record struct ScoredLook(double Probability, bool MayGo, bool? WithinFixedLimits, double? DarkCloud, bool Usable)
{
    /// <summary>For the scores of probabilities.</summary>
    public ForecastPair Pair => new(Probability, Usable);
}
