namespace NightWatch.Words;

/// <summary>What a figure in a letter or on a page is about.</summary>
public enum FactName
{
    /// <summary>The best stretch of a night that is off.</summary>
    BestStretch,

    /// <summary>When to shoot.</summary>
    ShootingWindow,

    /// <summary>When to leave home.</summary>
    LeaveBy,

    /// <summary>How likely a usable night is.</summary>
    Chance,

    /// <summary>What came of earlier calls.</summary>
    Record,

    /// <summary>The way to the site.</summary>
    GettingThere,

    /// <summary>The shooting window as it was told.</summary>
    ToldWindow,

    /// <summary>The chance as it was told.</summary>
    ToldChance,

    /// <summary>Cloud.</summary>
    Cloud,

    /// <summary>Dew.</summary>
    Dew,

    /// <summary>The Moon.</summary>
    Moon,

    /// <summary>How many frames of what kind.</summary>
    Frames,

    /// <summary>The first frame and the last.</summary>
    FromTo,

    /// <summary>Length of the film.</summary>
    PlaysFor,

    /// <summary>How far stars move within a frame.</summary>
    StarTrails,

    /// <summary>Room that the frames take.</summary>
    OnTheCards,

    /// <summary>Where the forecast comes from.</summary>
    Forecast,

    /// <summary>Whose data.</summary>
    Data,

    /// <summary>Where the camera points.</summary>
    Aim,

    /// <summary>How the camera moves.</summary>
    Move,

    /// <summary>Frames to try the exposure with.</summary>
    TestFrames,

    /// <summary>How bright the sky comes out.</summary>
    SkyInFrame,

    /// <summary>How dark the sky is.</summary>
    DarkSky,

    /// <summary>The front element of the lens.</summary>
    Lens,

    /// <summary>The ground.</summary>
    Ground,

    /// <summary>The packs.</summary>
    Batteries,

    /// <summary>When the cards are full.</summary>
    CardChange,

    /// <summary>Where Sun, Moon and subject stand.</summary>
    SunMoonSubject,

    /// <summary>The weather at one time.</summary>
    WeatherAtATime,

    /// <summary>Brightness of the sky.</summary>
    SkyBrightness,

    /// <summary>Light of the Moon.</summary>
    Moonlight,

    /// <summary>Contrast of the subject.</summary>
    Contrast,

    /// <summary>The subject's way across the frame.</summary>
    PathInFrame,

    /// <summary>The cards.</summary>
    Cards,

    /// <summary>The clock times.</summary>
    Timeline,

    /// <summary>What can hurt.</summary>
    Caution,
}
