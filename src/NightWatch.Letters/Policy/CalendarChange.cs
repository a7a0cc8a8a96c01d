namespace NightWatch.Letters.Policy;

/// <summary>What a letter does to the night's one entry in the subscriber's calendar.</summary>
public enum CalendarChange
{
    /// <summary>Leaves it alone.</summary>
    None,

    /// <summary>Puts it there or moves it (iTIP REQUEST).</summary>
    Request,

    /// <summary>Takes it out (iTIP CANCEL).</summary>
    Cancel,
}
