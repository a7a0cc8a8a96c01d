using NightWatch.Sky.Places;

namespace NightWatch.Planning.Directions;

/// <summary>A unit vector in the frame of the ground: east, north, up.</summary>
internal readonly record struct Direction(double East, double North, double Up)
{
    private const double Degree = Math.PI / 180;

    public static Direction Of(double altitudeDeg, double azimuthDeg)
    {
        var (sinAlt, cosAlt) = Math.SinCos(altitudeDeg * Degree);
        var (sinAz, cosAz) = Math.SinCos(azimuthDeg * Degree);
        return new Direction(cosAlt * sinAz, cosAlt * cosAz, sinAlt);
    }

    public static Direction Pole(double latitudeDeg) => Of(latitudeDeg, 0);

    public Horizontal ToHorizontal()
    {
        var azimuth = Math.Atan2(East, North) / Degree;
        return new Horizontal(Math.Asin(Math.Clamp(Up, -1, 1)) / Degree, azimuth < 0 ? azimuth + 360 : azimuth);
    }

    public double Dot(in Direction other) => East * other.East + North * other.North + Up * other.Up;

    public Direction Cross(in Direction other) => new(
        North * other.Up - Up * other.North, Up * other.East - East * other.Up, East * other.North - North * other.East);

    public Direction Unit()
    {
        var length = Math.Sqrt(Dot(this));
        return new Direction(East / length, North / length, Up / length);
    }

    public static Direction operator +(in Direction a, in Direction b) => new(a.East + b.East, a.North + b.North, a.Up + b.Up);

    public static Direction operator *(double scale, in Direction d) => new(scale * d.East, scale * d.North, scale * d.Up);
}
