using NodaTime;

namespace NightWatch.Planning.Chance;

/// <summary>Mean squared error of the chances said of one night.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Start">By the prior alone.</param>
/// <param name="Learnt">By what had been learnt when they were said.</param>
public readonly record struct NightErrors(LocalDate Night, double Start, double Learnt);
