namespace NightWatch.Planning.Reasons;

/// <summary>How bad it is that a factor leaves so much of the frames' worth over a run.</summary>
internal static class WorthSeverity
{
    /// <summary>
    /// A run whose frames are worth less in the mean does not hold together: six of ten must be good on the whole (engineering choice).
    /// </summary>
    public const double LeastMean = 0.6;

    /// <summary>A tenth of the worth is no matter.</summary>
    private const double Fine = 0.9;

    /// <summary>
    /// By the mean share that is left: fine, a caution, or a stop where no run would hold together. NaN (unknown) is a caution.
    /// </summary>
    public static Severity Of(double meanShare) =>
        meanShare >= Fine ? Severity.Ok : meanShare < LeastMean ? Severity.Stop : Severity.Caution;
}
