namespace NightWatch.Planning.Watches;

/// <summary>How much of the frame the ground should fill.</summary>
/// <param name="Least">At least this share of the frame lies below the skyline, 0 to 1.</param>
/// <param name="Most">At most this share.</param>
public readonly record struct ForegroundWish(double Least, double Most)
{
    /// <summary>None: any heading will do.</summary>
    public static ForegroundWish Any { get; } = new(0, 1);

    /// <summary>The share is as wished.</summary>
    public bool Holds(double share) => share >= Least && share <= Most;
}
