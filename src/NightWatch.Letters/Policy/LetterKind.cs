namespace NightWatch.Letters.Policy;

/// <summary>The letters there are.</summary>
public enum LetterKind
{
    /// <summary>A promising night is coming.</summary>
    Outlook,

    /// <summary>The day of a night that is on: every clock time.</summary>
    MorningTimeline,

    /// <summary>Today has changed against what was told.</summary>
    RescheduleWarning,

    /// <summary>A planned night is off.</summary>
    StandDown,

    /// <summary>What was it really like?</summary>
    Debrief,
}

/// <summary>Which pass is looking.</summary>
public enum PassKind
{
    /// <summary>The evening pass over the nights ahead.</summary>
    Evening,

    /// <summary>The morning pass on the day.</summary>
    Morning,

    /// <summary>A check on the day, between morning and leave-by.</summary>
    SameDay,

    /// <summary>Leave-by has come.</summary>
    LeaveBy,

    /// <summary>The morning after.</summary>
    After,

    /// <summary>The week's digest; it is about no single night, and the policy has no part in it.</summary>
    Digest,
}
