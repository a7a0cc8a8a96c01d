namespace NightWatch.Planning.Ground;

/// <summary>What the ground is like to stand and kneel on.</summary>
public enum GroundState
{
    /// <summary>Rain or antecedent rain is not known.</summary>
    Unknown,

    /// <summary>Dry.</summary>
    Dry,

    /// <summary>Damp to the hand.</summary>
    Damp,

    /// <summary>Wets boots and bags.</summary>
    Wet,
}
