namespace NightWatch.Sky.Frames;

/// <summary>A vector in a right-handed equatorial frame; the unit is the caller's.</summary>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>Right ascension of the direction, degrees, 0 to below 360.</summary>
    public double RightAscensionDeg => double.RadiansToDegrees(Math.Atan2(Y, X)) is var deg && deg < 0 ? deg + 360 : deg;

    /// <summary>Declination of the direction, degrees.</summary>
    public double DeclinationDeg => double.RadiansToDegrees(Math.Atan2(Z, Math.Sqrt(X * X + Y * Y)));

    /// <summary>The unit vector of a direction.</summary>
    public static Vector3D FromDegrees(double rightAscensionDeg, double declinationDeg)
    {
        var (sinRa, cosRa) = Math.SinCos(double.DegreesToRadians(rightAscensionDeg));
        var (sinDec, cosDec) = Math.SinCos(double.DegreesToRadians(declinationDeg));
        return new(cosDec * cosRa, cosDec * sinRa, sinDec);
    }

    /// <summary>Scalar product.</summary>
    public double Dot(Vector3D other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>Vector product.</summary>
    public Vector3D Cross(Vector3D other) =>
        new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>The angle to another direction, radians, 0 to π; exact for small and for nearly opposite ones too.</summary>
    public double AngleTo(Vector3D other) => Math.Atan2(Cross(other).Length, Dot(other));

    /// <summary>Sum.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Multiple.</summary>
    public static Vector3D operator *(double factor, Vector3D a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
