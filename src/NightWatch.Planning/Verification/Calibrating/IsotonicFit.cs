namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>Isotonic calibration: what comes of a higher probability comes at least as often.</summary>
/// <remarks>Zadrozny and Elkan 2002, Proc. 8th ACM SIGKDD, 694. Needs more pairs than the logistic map, and takes any shape.</remarks>
public static class IsotonicFit
{
    /// <summary>Fits the map.</summary>
    /// <param name="pairs">At least one.</param>
    public static CalibrationMap.Isotonic Of(IEnumerable<ForecastPair> pairs)
    {
        // Equal probabilities are one value: they must come out equal whatever their order.
        var said = pairs.GroupBy(pair => pair.Probability).OrderBy(group => group.Key)
            .Select(group => (Said: group.Key, Came: group.Average(pair => pair.Came ? 1.0 : 0), Weight: (double)group.Count())).ToList();
        var fit = MonotoneFit.Of([.. said.Select(value => value.Came)], [.. said.Select(value => value.Weight)]);
        var knots = new List<CalibrationKnot>();
        for (var i = 0; i < fit.Length; i++)
        {
            // Of a level stretch the two ends are enough.
            var inside = i > 0 && i < fit.Length - 1 && fit[i - 1] == fit[i] && fit[i + 1] == fit[i];
            if (!inside) knots.Add(new CalibrationKnot(said[i].Said, fit[i]));
        }

        return new CalibrationMap.Isotonic(knots);
    }
}
