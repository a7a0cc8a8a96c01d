namespace NightWatch.Words;

/// <summary>A quantity along the night, as tables and the cursor of its page name it.</summary>
public enum Quantity
{
    /// <summary>All cloud.</summary>
    Cloud,

    /// <summary>Low cloud.</summary>
    LowCloud,

    /// <summary>Medium cloud.</summary>
    MediumCloud,

    /// <summary>High cloud.</summary>
    HighCloud,

    /// <summary>Rain.</summary>
    Rain,

    /// <summary>Chance of rain.</summary>
    RainChance,

    /// <summary>Chance of thunder.</summary>
    ThunderChance,

    /// <summary>Wind.</summary>
    Wind,

    /// <summary>Gusts.</summary>
    Gusts,

    /// <summary>Temperature of the air.</summary>
    Air,

    /// <summary>Dew point.</summary>
    DewPoint,

    /// <summary>Humidity.</summary>
    Humidity,

    /// <summary>Fog.</summary>
    Fog,

    /// <summary>Visibility.</summary>
    Visibility,

    /// <summary>The lens above its dew point.</summary>
    LensMargin,

    /// <summary>The same with the heater on.</summary>
    HeatedMargin,

    /// <summary>Temperature of the front element.</summary>
    LensFront,

    /// <summary>Altitude of the subject.</summary>
    SubjectAltitude,

    /// <summary>Azimuth of the subject.</summary>
    SubjectAzimuth,

    /// <summary>Altitude of the Moon.</summary>
    MoonAltitude,

    /// <summary>Azimuth of the Moon.</summary>
    MoonAzimuth,

    /// <summary>What moonlight adds to the sky.</summary>
    MoonlightAdded,

    /// <summary>Altitude of the Sun.</summary>
    SunAltitude,

    /// <summary>Brightness of the sky.</summary>
    Sky,

    /// <summary>Contrast of the subject.</summary>
    Contrast,

    /// <summary>Brightness of the sky in the frame.</summary>
    SkyInFrame,

    /// <summary>Worth of a frame.</summary>
    Worth,
}
