namespace NightWatch.Sky.Frames;

/// <summary>Units of angle, in radians.</summary>
internal static class Angles
{
    /// <summary>One second of arc.</summary>
    public const double Arcsecond = Math.PI / 648000;

    /// <summary>One minute of arc.</summary>
    public const double Arcminute = Math.PI / 10800;

    /// <summary>One degree.</summary>
    public const double Degree = Math.PI / 180;
}
