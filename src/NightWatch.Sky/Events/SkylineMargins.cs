using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Events;

/// <summary>A direction without parallax: its geometric altitude above the skyline.</summary>
internal readonly ref struct FixedMargin(AltitudeCurve curve, HorizonProfile horizon) : ISkylineMargin
{
    private readonly AltitudeCurve curve = curve;

    public double DegAt(double u)
    {
        var direction = Horizontal.Of(curve.Local(u));
        return direction.AltitudeDeg - horizon.AltitudeDegAt(direction.AzimuthDeg);
    }
}

/// <summary>The Moon's upper limb as it is seen, with refraction, above the skyline.</summary>
internal readonly ref struct MoonMargin(AltitudeCurve centre, HorizonProfile horizon) : ISkylineMargin
{
    private readonly AltitudeCurve centre = centre;

    public double DegAt(double u)
    {
        var local = centre.Local(u);
        var direction = Horizontal.Of(local);
        var limb = direction.AltitudeDeg + Math.Asin(ApparentMoon.RadiusKm / local.Length) / Angles.Degree;
        return limb + HorizonRefraction.DegAt(limb) - horizon.AltitudeDegAt(direction.AzimuthDeg);
    }
}
