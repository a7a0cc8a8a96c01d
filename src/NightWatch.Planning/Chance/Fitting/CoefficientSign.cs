namespace NightWatch.Planning.Chance.Fitting;

/// <summary>Which signs of a coefficient a fit may give.</summary>
public enum CoefficientSign
{
    /// <summary>Any.</summary>
    Free,

    /// <summary>More of the figure never lowers the probability.</summary>
    AtLeastZero,

    /// <summary>More of the figure never raises the probability.</summary>
    AtMostZero,
}
