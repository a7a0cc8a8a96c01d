using NodaTime;

namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>A pair with its night: nights close together share their weather.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Pair">What was said and what came.</param>
public readonly record struct DatedPair(LocalDate Night, ForecastPair Pair);
