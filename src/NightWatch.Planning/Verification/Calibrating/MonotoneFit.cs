namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>Least-squares fit that never falls, by pooling adjacent violators.</summary>
/// <remarks>Ayer, Brunk, Ewing, Reid and Silverman 1955, Annals of Mathematical Statistics 26, 641. Linear in the number of values.</remarks>
public static class MonotoneFit
{
    /// <summary>The fit, one value for each given.</summary>
    /// <param name="values">In the order in which the fit must not fall.</param>
    /// <param name="weights">Positive, one a value.</param>
    /// <exception cref="ArgumentException">Not one weight a value.</exception>
    public static double[] Of(IReadOnlyList<double> values, IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(weights);
        if (values.Count != weights.Count) throw new ArgumentException("Accepted: one weight a value.", nameof(weights));
        var blocks = new Stack<(double Mean, double Weight, int Count)>();
        for (var i = 0; i < values.Count; i++)
        {
            var block = (Mean: values[i], Weight: weights[i], Count: 1);
            while (blocks.TryPeek(out var before) && before.Mean >= block.Mean)
            {
                blocks.Pop();
                var weight = before.Weight + block.Weight;
                block = ((before.Mean * before.Weight + block.Mean * block.Weight) / weight, weight, before.Count + block.Count);
            }

            blocks.Push(block);
        }

        var fit = new double[values.Count];
        var end = fit.Length;
        foreach (var (mean, _, count) in blocks)
        {
            Array.Fill(fit, mean, end - count, count);
            end -= count;
        }

        return fit;
    }
}
