namespace NightWatch.Words;

/// <summary>What is new of a night, as its headline and its subject line say it.</summary>
public enum NightNews
{
    /// <summary>A go lies ahead.</summary>
    GoodComing,

    /// <summary>A marginal night lies ahead.</summary>
    FairComing,

    /// <summary>It is a go.</summary>
    On,

    /// <summary>It is marginal.</summary>
    MayWork,

    /// <summary>It was told as off and is a go.</summary>
    OnAgain,

    /// <summary>It was told as a go and is marginal.</summary>
    Slipped,

    /// <summary>It is a no-go.</summary>
    Off,

    /// <summary>It was told as on and is given up.</summary>
    StoodDown,

    /// <summary>Its reader gave it up.</summary>
    StoodDownAsWished,

    /// <summary>Its reader took it in place of another, and it is a go.</summary>
    SwitchedOn,

    /// <summary>Its reader took it in place of another, and it is marginal.</summary>
    SwitchedMayWork,

    /// <summary>It is over, and its reader is asked about it.</summary>
    Asked,

    /// <summary>It lies ahead, and so far it is a go.</summary>
    LooksGood,

    /// <summary>It lies ahead, and so far it is a no-go.</summary>
    LooksBad,
}
