namespace NightWatch.Sky.Events;

/// <summary>The 34′ by which almanacs raise a body at the horizon.</summary>
internal static class HorizonRefraction
{
    /// <summary>Its sine.</summary>
    public static readonly double Sin = Math.Sin(34 * Frames.Angles.Arcminute);

    /// <summary>Its cosine.</summary>
    public static readonly double Cos = Math.Cos(34 * Frames.Angles.Arcminute);
}
