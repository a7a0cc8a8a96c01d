namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>Logistic calibration: intercept and slope on the scale of log odds.</summary>
/// <remarks>
/// Most likely parameters by Newton's method, with a normal prior of deviation 1 around "leave it as it is" (intercept 0, slope 1): few pairs
/// move little, and pairs that one threshold separates still have a finite fit. The objective is strictly concave, so the fit is the only one.
/// </remarks>
public static class LogisticFit
{
    /// <summary>Nearer to certainty than this, log odds are held.</summary>
    private const double Edge = 1e-3;

    private const int MostSteps = 50;

    /// <summary>Log odds, held at ±6.9.</summary>
    public static double Logit(double probability)
    {
        var p = Math.Clamp(probability, Edge, 1 - Edge);
        return Math.Log(p / (1 - p));
    }

    /// <summary>Fits the map.</summary>
    /// <param name="pairs">Any number; none leaves it as it is.</param>
    public static CalibrationMap.Logistic Of(IEnumerable<ForecastPair> pairs)
    {
        var groups = pairs.GroupBy(pair => Logit(pair.Probability))
            .Select(group => (X: group.Key, Count: (double)group.Count(), Came: (double)group.Count(pair => pair.Came))).OrderBy(group => group.X).ToList();
        var (a, b) = (0.0, 1.0);
        for (var step = 0; step < MostSteps; step++)
        {
            // Gradient and curvature of the log posterior.
            var (ga, gb, haa, hab, hbb) = (-a, -(b - 1), 1.0, 0.0, 1.0);
            foreach (var (x, count, came) in groups)
            {
                var p = 1 / (1 + Math.Exp(-(a + b * x)));
                var residual = came - count * p;
                var w = count * p * (1 - p);
                (ga, gb) = (ga + residual, gb + residual * x);
                (haa, hab, hbb) = (haa + w, hab + w * x, hbb + w * x * x);
            }

            var determinant = haa * hbb - hab * hab;
            var (da, db) = ((ga * hbb - gb * hab) / determinant, (gb * haa - ga * hab) / determinant);
            // A full step far from the top may overshoot.
            var scale = Math.Min(1, 2 / Math.Max(Math.Abs(da), Math.Abs(db)));
            (a, b) = (a + scale * da, b + scale * db);
            if (Math.Abs(da) + Math.Abs(db) < 1e-10) break;
        }

        return new CalibrationMap.Logistic(a, b);
    }
}
