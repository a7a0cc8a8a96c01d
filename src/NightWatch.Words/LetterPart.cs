namespace NightWatch.Words;

/// <summary>A part of a letter, or a short word before one, as its heading names it.</summary>
public enum LetterPart
{
    /// <summary>What can hurt.</summary>
    Hazard,

    /// <summary>The next thing to do.</summary>
    Next,

    /// <summary>What differs from what was told.</summary>
    WhatChanged,

    /// <summary>In the table of changes: what.</summary>
    What,

    /// <summary>In the table of changes: as it was.</summary>
    Then,

    /// <summary>In the table of changes: as it is.</summary>
    Now,

    /// <summary>The choices instead.</summary>
    Instead,

    /// <summary>The clock times.</summary>
    Timeline,

    /// <summary>The frames.</summary>
    Sequence,

    /// <summary>What to set and expect there.</summary>
    InTheField,

    /// <summary>What to take.</summary>
    Packing,

    /// <summary>The findings.</summary>
    Reasons,

    /// <summary>What would mend a finding.</summary>
    Fix,

    /// <summary>Where the forecast comes from.</summary>
    Forecast,

    /// <summary>What stays true of every night out.</summary>
    BeforeAnyNight,

    /// <summary>What an upgrade changed.</summary>
    WhatIsNew,

    /// <summary>The coming dark nights of a digest.</summary>
    NextDarkNights,
}
