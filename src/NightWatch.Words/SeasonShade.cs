namespace NightWatch.Words;

/// <summary>What a colour of the season's picture stands for.</summary>
public enum SeasonShade
{
    /// <summary>Dark, the Moon down, the subject up where there is one.</summary>
    Usable,

    /// <summary>Dark, the Moon down, the subject down.</summary>
    SubjectDown,

    /// <summary>Dark but for a thin Moon.</summary>
    ThinMoon,

    /// <summary>Dark but for a full Moon.</summary>
    FullMoon,

    /// <summary>The Sun from −12° to −18°.</summary>
    AstronomicalTwilight,

    /// <summary>The Sun from −6° to −12°.</summary>
    NauticalTwilight,

    /// <summary>The Sun from its setting to −6°.</summary>
    CivilTwilight,

    /// <summary>The Sun is up.</summary>
    Day,

    /// <summary>The Moon wholly in the Earth's shadow.</summary>
    EclipsedMoon,

    /// <summary>The line where the subject passes its least altitude.</summary>
    SubjectEdge,
}
