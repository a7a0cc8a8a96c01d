namespace NightWatch.Words;

/// <summary>What a night's table names beside a clock time.</summary>
public enum SkyEvent
{
    /// <summary>The Sun's upper limb goes below the horizon.</summary>
    Sunset,

    /// <summary>The Sun is at −6° and falling.</summary>
    CivilDusk,

    /// <summary>The Sun is at −12° and falling.</summary>
    NauticalDusk,

    /// <summary>The Sun is at −18° and falling.</summary>
    AstronomicalDusk,

    /// <summary>The Sun is lowest.</summary>
    SolarMidnight,

    /// <summary>The Sun is at −18° and rising.</summary>
    AstronomicalDawn,

    /// <summary>The Sun is at −12° and rising.</summary>
    NauticalDawn,

    /// <summary>The Sun is at −6° and rising.</summary>
    CivilDawn,

    /// <summary>The Sun's upper limb comes above the horizon.</summary>
    Sunrise,

    /// <summary>The subject rises.</summary>
    SubjectRise,

    /// <summary>The subject sets.</summary>
    SubjectSet,

    /// <summary>The Moon rises.</summary>
    Moonrise,

    /// <summary>The Moon sets.</summary>
    Moonset,
}
