namespace NightWatch.Planning.Verification;

/// <summary>Score of probabilities for ordered classes, in which a near miss costs less than a far one.</summary>
/// <remarks>
/// Epstein 1969, J. Appl. Meteorol. 8, 985, in the form of Murphy 1971, J. Appl. Meteorol. 10, 155:
/// <c>RPS = Σₖ (Pₖ − Oₖ)²</c> over the cumulative probabilities. Not divided by the number of classes less one; with two classes it is
/// the Brier score. 0 is perfect.
/// </remarks>
public static class RankedProbabilityScore
{
    /// <summary>Of one forecast.</summary>
    /// <param name="probabilities">One a class, in their order; they add up to 1.</param>
    /// <param name="came">Index of the class that came.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such class.</exception>
    public static double Of(ReadOnlySpan<double> probabilities, int came)
    {
        if (came < 0 || came >= probabilities.Length)
            throw new ArgumentOutOfRangeException(nameof(came), came, $"Accepted: 0 to {probabilities.Length - 1}.");
        var (sum, below) = (0.0, 0.0);
        for (var k = 0; k < probabilities.Length - 1; k++)
        {
            below += probabilities[k];
            var error = below - (came <= k ? 1 : 0);
            sum += error * error;
        }

        return sum;
    }
}
