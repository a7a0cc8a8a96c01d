namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>What a source may tell of a night.</summary>
public enum ToldPart
{
    /// <summary>That it was usable.</summary>
    Usable,

    /// <summary>That it was not.</summary>
    Unusable,

    /// <summary>That it cannot tell.</summary>
    NotTold,

    /// <summary>Nothing: not a word.</summary>
    Silent,
}
