namespace NightWatch.Sky.Band;

/// <summary>How the galactic band stands over a place: what decides between a panorama and an upright frame.</summary>
/// <remarks>The limits, 30° and 60°, are common practice, no source.</remarks>
public enum BandStance
{
    /// <summary>An arch below 30°: it fits into one low row of a panorama.</summary>
    LowArch,

    /// <summary>An arch of 30° to 60°: several rows, or a slanting single frame.</summary>
    HighArch,

    /// <summary>Above 60°: from its feet it goes up more steeply than it goes along; single upright frames.</summary>
    Upright,
}
