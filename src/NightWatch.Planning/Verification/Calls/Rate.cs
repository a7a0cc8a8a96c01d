namespace NightWatch.Planning.Verification.Calls;

/// <summary>So many of so many, and how far off that may be by chance.</summary>
/// <param name="Hits">How many.</param>
/// <param name="Count">Of how many.</param>
public readonly record struct Rate(int Hits, int Count)
{
    /// <summary>Share; null of nothing.</summary>
    public double? Share => Count == 0 ? null : (double)Hits / Count;

    /// <summary>95 % by Wilson 1927; anything, of nothing.</summary>
    public ProportionInterval Interval => ProportionInterval.Wilson(Hits, Count);
}
