namespace NightWatch.Planning.Verification;

/// <summary>How far off an observed share may be by chance.</summary>
/// <param name="Low">Lower bound, 0 to 1.</param>
/// <param name="High">Upper bound, 0 to 1.</param>
public readonly record struct ProportionInterval(double Low, double High)
{
    /// <summary>Two-sided 95 % of the normal distribution.</summary>
    private const double Z95 = 1.959963984540054;

    /// <summary>Nothing was seen: anything may be.</summary>
    public static ProportionInterval Unknown { get; } = new(0, 1);

    /// <summary>Wilson's score interval, 95 %.</summary>
    /// <remarks>
    /// Wilson 1927, J. Am. Stat. Assoc. 22, 209. Unlike p ± 2σ it stays inside 0 to 1 and is honest with few nights: 5 of 5 gives 57 to
    /// 100 %, 0 of 0 anything. It takes nights for independent; nights of one spell are not, so the truth is wider.
    /// </remarks>
    /// <param name="hits">How often it came.</param>
    /// <param name="count">Of how many.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or more hits than nights.</exception>
    public static ProportionInterval Wilson(int hits, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, count);
        if (count == 0) return Unknown;
        var p = (double)hits / count;
        var zz = Z95 * Z95;
        var centre = (p + zz / (2 * count)) / (1 + zz / count);
        var half = Z95 / (1 + zz / count) * Math.Sqrt(p * (1 - p) / count + zz / (4.0 * count * count));
        // At 0 and at all the bound is exact; rounding must not push it beyond.
        return new ProportionInterval(hits == 0 ? 0 : centre - half, hits == count ? 1 : centre + half);
    }
}
