namespace NightWatch.Planning.Chance.Fitting;

/// <summary>Logistic regression from a normal prior to a normal posterior (Laplace's approximation).</summary>
/// <remarks>
/// <para>
/// The mode is found by Newton steps that are halved until the objective falls: a whole step cycles or diverges where it starts far out.
/// The objective is convex, so the mode is the only one. The posterior's precision is the curvature there (MacKay 1992, Neural
/// Computation 4, 720).
/// </para>
/// <para>
/// Where signs are asked for, the mode is the best of those that have them, not a mode with its wrong signs struck out: the steps are
/// projected, and a coefficient at zero that would cross it stands aside (Bertsekas 1982, SIAM J. Control Optim. 20, 221).
/// </para>
/// </remarks>
public static class BayesLogistic
{
    private const int MostSteps = 100;
    private const int MostHalvings = 60;

    /// <summary>A step that promises less than this of the objective, a negative log probability, is the last.</summary>
    private const double LeastGain = 1e-16;

    /// <summary>Share of the promised gain that a step must bring (Armijo 1966).</summary>
    private const double LeastShare = 1e-4;

    /// <summary>Logistic function: log odds to a probability.</summary>
    public static double Sigmoid(double logOdds) =>
        logOdds >= 0 ? 1 / (1 + Math.Exp(-logOdds)) : Math.Exp(logOdds) / (1 + Math.Exp(logOdds));

    /// <summary>The probability that log odds known only to a variance come to.</summary>
    /// <param name="logOdds">Their mean.</param>
    /// <param name="variance">Their variance; 0: they are known.</param>
    /// <remarks>MacKay 1992, Neural Computation 4, 720: sigmoid(a / sqrt(1 + pi v / 8)).</remarks>
    public static double Moderated(double logOdds, double variance) => Sigmoid(logOdds / Math.Sqrt(1 + Math.PI * variance / 8));

    /// <summary>Fits the model to observations.</summary>
    /// <param name="prior">What is believed before; a precision of zero where nothing is.</param>
    /// <param name="rows">Observations; none gives the prior, or its mode among the signs asked for.</param>
    /// <param name="signs">One a coefficient; null: all free.</param>
    /// <param name="start">Where the search begins; null: the prior's mean. The fit does not depend on it.</param>
    /// <returns>The posterior, and how many steps led to it.</returns>
    /// <exception cref="ArgumentException">Sizes differ, or neither prior nor rows tell anything of a coefficient.</exception>
    /// <exception cref="InvalidOperationException">A threshold separates the rows, and the prior tells nothing.</exception>
    public static (Belief Posterior, int Steps) Fit(
        Belief prior,
        IReadOnlyCollection<LogisticRow> rows,
        IReadOnlyList<CoefficientSign>? signs = null,
        IReadOnlyList<double>? start = null)
    {
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(rows);
        var size = prior.Mean.Length;
        if (rows.Any(row => row.Figures.Length != size)) throw new ArgumentException($"Accepted: {size} figures a row.", nameof(rows));
        if ((signs?.Count ?? size) != size) throw new ArgumentException($"Accepted: {size} signs.", nameof(signs));
        if ((start?.Count ?? size) != size) throw new ArgumentException($"Accepted: {size} values.", nameof(start));

        double[] at = [.. start ?? prior.Mean];
        Project(at, signs);
        var value = Objective(prior, rows, at);
        for (var steps = 0; steps < MostSteps; steps++)
        {
            var (gradient, curvature) = Slopes(prior, rows, at);
            var free = Enumerable.Range(0, size).Where(i => !Held(at[i], gradient[i], SignOf(signs, i))).ToArray();
            var direction = new double[size];
            var root = Cholesky.TryOf(curvature.Of(free))
                ?? throw new ArgumentException("Accepted: a prior or rows that tell something of every coefficient.", nameof(rows));
            var newton = root.Solve(free.Select(i => -gradient[i]).ToArray());
            for (var k = 0; k < free.Length; k++) direction[free[k]] = newton[k];
            if (-Dot(gradient, direction) < LeastGain) return (new Belief([.. at], curvature), steps);

            if (Shorter(prior, rows, signs, at, direction, gradient, value) is not { } next) return (new Belief([.. at], curvature), steps);
            (at, value) = next;
        }

        throw new InvalidOperationException($"The fit came to no end within {MostSteps} steps.");
    }

    // The longest of the halved steps that brings its share of the gain; null: none does, and so nothing more can be gained in doubles.
    private static (double[] At, double Value)? Shorter(
        Belief prior,
        IReadOnlyCollection<LogisticRow> rows,
        IReadOnlyList<CoefficientSign>? signs,
        double[] at,
        double[] direction,
        double[] gradient,
        double value)
    {
        var length = 1.0;
        for (var halving = 0; halving < MostHalvings; halving++, length /= 2)
        {
            double[] there = [.. at.Select((x, i) => x + length * direction[i])];
            Project(there, signs);
            var promised = -Dot(gradient, there.Select((x, i) => x - at[i]).ToArray());
            var reached = Objective(prior, rows, there);
            if (reached < value && reached <= value - LeastShare * promised) return (there, reached);
        }

        return null;
    }

    // Negative log of prior times likelihood, but for a constant.
    private static double Objective(Belief prior, IReadOnlyCollection<LogisticRow> rows, double[] at)
    {
        double[] off = [.. at.Select((x, i) => x - prior.Mean[i])];
        var sum = Dot(off, prior.Precision.Times(off)) / 2;
        foreach (var row in rows)
        {
            var logOdds = Dot(row.Figures.AsSpan(), at);
            sum += row.Weight * Softplus(row.Came ? -logOdds : logOdds);
        }

        return sum;
    }

    private static (double[] Gradient, SymmetricMatrix Curvature) Slopes(Belief prior, IReadOnlyCollection<LogisticRow> rows, double[] at)
    {
        var gradient = prior.Precision.Times(at.Select((x, i) => x - prior.Mean[i]).ToArray());
        var lower = prior.Precision.Lower.ToArray();
        foreach (var row in rows)
        {
            var p = Sigmoid(Dot(row.Figures.AsSpan(), at));
            var error = row.Weight * (p - (row.Came ? 1 : 0));
            for (var i = 0; i < at.Length; i++) gradient[i] += error * row.Figures[i];
            SymmetricMatrix.AddOuter(lower, row.Figures.AsSpan(), row.Weight * p * (1 - p));
        }

        return (gradient, SymmetricMatrix.OfLower(at.Length, lower));
    }

    private static CoefficientSign SignOf(IReadOnlyList<CoefficientSign>? signs, int i) => signs?[i] ?? CoefficientSign.Free;

    // Stands at zero and would go on to the side that is not allowed.
    private static bool Held(double at, double gradient, CoefficientSign sign) => sign switch
    {
        CoefficientSign.AtLeastZero => at <= 0 && gradient > 0,
        CoefficientSign.AtMostZero => at >= 0 && gradient < 0,
        _ => false,
    };

    private static void Project(double[] at, IReadOnlyList<CoefficientSign>? signs)
    {
        for (var i = 0; i < at.Length; i++)
        {
            at[i] = SignOf(signs, i) switch
            {
                CoefficientSign.AtLeastZero => Math.Max(at[i], 0),
                CoefficientSign.AtMostZero => Math.Min(at[i], 0),
                _ => at[i],
            };
        }
    }

    // ln(1 + e^x), also where e^x is too large.
    private static double Softplus(double x) => x > 0 ? x + Math.Log(1 + Math.Exp(-x)) : Math.Log(1 + Math.Exp(x));

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
