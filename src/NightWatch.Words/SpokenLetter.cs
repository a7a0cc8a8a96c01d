namespace NightWatch.Words;

/// <summary>A letter as another one refers to it.</summary>
public enum SpokenLetter
{
    /// <summary>One that looked ahead.</summary>
    Outlook,

    /// <summary>The one with the day's clock times.</summary>
    MorningTimeline,

    /// <summary>The one that told of a change on the day.</summary>
    RescheduleWarning,

    /// <summary>The one that gave the night up.</summary>
    StandDown,

    /// <summary>Any other.</summary>
    Other,
}
