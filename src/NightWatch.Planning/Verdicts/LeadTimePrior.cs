namespace NightWatch.Planning.Verdicts;

/// <summary>What is known of a cloud forecast's error before any verification of our own.</summary>
/// <remarks>
/// Ye and Chen 2013, MNRAS 428, 3288, for total cloud of a global model against satellite climatology: the probability of an error
/// below 30 % falls from 73 % to 58 % over 180 h (taken as linear between). The shape of the error is not published; a logistic
/// distribution with that share inside ±30 % is an engineering choice, for its heavy tails and closed form.
/// </remarks>
internal static class LeadTimePrior
{
    private const double ErrorBound = 0.30;
    private const double ShareAtStart = 0.73;
    private const double ShareAtEnd = 0.58;
    private const double EndHours = 180;

    /// <summary>Probability that the error of total cloud is below 30 % of the sky.</summary>
    /// <param name="leadHours">From the forecast's issue to the night; held at the ends outside 0 to 180.</param>
    public static double SmallErrorShare(double leadHours) =>
        ShareAtStart + (ShareAtEnd - ShareAtStart) * Math.Clamp(leadHours, 0, EndHours) / EndHours;

    /// <summary>Probability that the cloud comes out below a limit.</summary>
    /// <param name="cloud">Forecast mean, fraction.</param>
    /// <param name="limit">Fraction.</param>
    /// <param name="leadHours">From the forecast's issue to the night.</param>
    public static double CloudBelow(double cloud, double limit, double leadHours)
    {
        // For a logistic error of scale s the share inside ±b is tanh(b / 2s).
        var scale = ErrorBound / (2 * Math.Atanh(SmallErrorShare(leadHours)));
        return 1 / (1 + Math.Exp(-(limit - cloud) / scale));
    }
}
