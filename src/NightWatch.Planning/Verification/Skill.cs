namespace NightWatch.Planning.Verification;

/// <summary>How much better than a reference a score is.</summary>
public static class Skill
{
    /// <summary><c>1 − score/reference</c>, for scores whose perfect value is 0.</summary>
    /// <param name="score">Score of the forecasts.</param>
    /// <param name="reference">Of climatology, persistence or whatever is to be beaten on the same nights.</param>
    /// <returns>1 perfect, 0 no better, negative worse; null where the reference is perfect and nothing can be gained.</returns>
    public static double? Of(double score, double reference) => reference > 0 ? 1 - score / reference : null;
}
