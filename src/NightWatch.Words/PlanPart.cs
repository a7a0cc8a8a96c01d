namespace NightWatch.Words;

/// <summary>A part of a plan that is a list or shared, so that it names no source of its own.</summary>
public enum PlanPart
{
    /// <summary>Sun, Moon and subject.</summary>
    Sky,

    /// <summary>The weather along the night.</summary>
    Weather,

    /// <summary>The lens along the night.</summary>
    Lens,

    /// <summary>The clear sky along the night.</summary>
    SkyBrightness,

    /// <summary>What moonlight adds to it.</summary>
    Moonlight,

    /// <summary>Contrast of the subject.</summary>
    Contrast,

    /// <summary>Brightness of the sky in the frame.</summary>
    SkyInFrame,

    /// <summary>The night in few figures.</summary>
    Summary,

    /// <summary>The clock times.</summary>
    Timeline,

    /// <summary>The nights after it.</summary>
    LaterNights,
}
